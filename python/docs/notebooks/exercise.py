"""What the notebooks share: a prediction beside what was found, and answers that are checked."""


def compare(predicted: float | None, found: float, unit: str) -> None:
    """Print what was found, and how far a prediction was from it."""
    print(
        f"found {found:.4g} {unit}"
        + ("" if predicted is None else f"; you said {predicted:g}, off by {abs(predicted - found):.2g}")
    )


def check(answer: float | None, solution: float, truth: float, within: float) -> None:
    """Hold an answer against the truth; where there is none yet, hold the solution of the notebook against it."""
    held = solution if answer is None else answer
    assert abs(held - truth) <= within, f"{held:g} is more than {within:g} off: look again"
    print("the solution holds" if answer is None else "your answer holds")
