"""What `progress=` of long work takes."""

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from importlib import import_module
from typing import Any, TypeAlias

Told: TypeAlias = Callable[[int, int], object]
Progress: TypeAlias = Told | bool | None


@contextmanager
def reported(progress: Progress) -> Iterator[Told | None]:
    """Give the callable that is told how much is done and of how much, or None; a bar is closed in the end, whatever happened."""
    if progress is None or progress is False:
        yield None
    elif progress is True:
        bar = _bar()
        if bar is None:
            yield None
            return
        with bar:

            def told(done: int, total: int) -> None:
                bar.total = total
                bar.update(done - bar.n)

            yield told
    elif callable(progress):
        yield progress
    else:
        raise TypeError("progress: a callable of what is done and of how much, True or None is needed")


def _bar() -> Any:
    """Give a bar of tqdm; None where it is not installed, or where nobody sees it."""
    if sys.stderr is None or not sys.stderr.isatty():
        return None
    try:
        tqdm = import_module("tqdm")
    except ModuleNotFoundError:
        return None
    return tqdm.tqdm(file=sys.stderr)
