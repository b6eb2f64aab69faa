"""`python -m bot` is the command `meniscus`."""

from bot.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
