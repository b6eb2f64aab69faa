"""The examples in the docstrings run."""

import doctest
import importlib
import pkgutil

import pytest

import core.schedule

MODULES = sorted(
    module.name
    for module in pkgutil.walk_packages(core.schedule.__path__, "core.schedule.")
    if not module.ispkg
)


@pytest.mark.parametrize("name", MODULES)
def test_examples(name):
    assert doctest.testmod(importlib.import_module(name)).failed == 0


def test_there_are_examples():
    finder = doctest.DocTestFinder()
    with_examples = {
        name
        for name in MODULES
        for test in finder.find(importlib.import_module(name))
        if test.examples
    }
    assert {
        "core.schedule.localtime",
        "core.schedule.moments",
        "core.schedule.notation",
        "core.schedule.quiet",
        "core.schedule.recurrence",
        "core.schedule.request",
        "core.schedule.zones",
    } <= with_examples
