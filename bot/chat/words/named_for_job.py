"""What is said of a product that is called by what it is for."""

from __future__ import annotations

from bot.chat.words.text import N_, _

OF_JOB = {
    "ph_up": N_(
        "What raises pH at once is mostly carbonate or lye, and pH jumps. KH is what holds pH:"
        " raise it a little with baking soda. Ask: dose kh +1"
    ),
    "ph_down": N_(
        "What lowers pH at once is acid: it uses KH up, and pH swings or crashes. KH is what holds"
        " pH; in fresh water lower both by small changes with RO or rain water."
    ),
    "kh_up": N_("KH is what holds pH. With baking soda I can work it out now. Ask: dose kh +1"),
    "kh_down": N_(
        "What lowers KH is acid, and KH is what holds pH. In fresh water lower it by small changes"
        " with RO or rain water."
    ),
    "gh_up": N_("GH holds no pH, KH does. With pure salts I can work GH out now. Ask: dose gh +1"),
    "gh_down": N_(
        "In fresh water GH is lowered by small changes with RO or rain water, by no additive."
    ),
    "buffer": N_("KH is what holds pH. With baking soda I can work it out now. Ask: dose kh +1"),
}
"""What holds pH, and how it is gone about without the product."""


def with_salt(job: str) -> str:
    """The words of the button that asks for it with salts that are known."""
    return _("with pure salts") if job == "gh_up" else _("with baking soda")


def ask_label(name: str, job: str) -> list[str]:
    """No number of it, what its label must say, and what holds pH."""
    told = _("No number for “{name}”: the name tells what it is for, not what is in it.")
    example = (
        N_("my gh: 5 g per 80 l raises gh 1")
        if job == "gh_up"
        else N_("my buffer: 5 g per 80 l raises kh 1")
    )
    label = _(
        "Its label must say how much in how many litres changes what by how much, and what is in"
        " it. Send it, for example: {example}"
    )
    return [told.format(name=name), label.format(example=_(example)), _(OF_JOB[job])]
