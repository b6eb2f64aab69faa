"""Every example in a docstring of the core is true."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import pytest

import core

MODULES = sorted(each.name for each in pkgutil.walk_packages(core.__path__, "core."))


@pytest.mark.parametrize("package", ["advice", "message", "schedule", "water", ""])
def test_examples_of_the_core_are_true(package: str) -> None:
    chosen = [
        name for name in MODULES if (name.count(".") > 1 and name.split(".")[1] == package)
        or (not package and name.count(".") == 1)
    ]  # fmt: skip
    assert chosen
    tried = 0
    for name in chosen:
        result = doctest.testmod(importlib.import_module(name))
        assert not result.failed, name
        tried += result.attempted
    assert tried or not package
