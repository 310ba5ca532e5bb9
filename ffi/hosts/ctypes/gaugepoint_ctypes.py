"""gaugepoint through ctypes: documents in, reports out, from the C library alone. Python 3.10 or later.

Load the library once: `g = Library("/prefix/lib/libgaugepoint_c.so")`. It may be used from any number of threads.
"""

import ctypes
from ctypes import POINTER, byref, c_char, c_char_p, c_double, c_int32, c_size_t, c_void_p, sizeof

ABI = 1


class _Error(ctypes.Structure):
    """GaugepointError of the header."""

    _fields_ = [
        ("struct_size", c_size_t),
        *((name, c_int32) for name in ("status", "has_value", "has_lower", "has_upper")),
        *((name, c_double) for name in ("value", "lower", "upper")),
        *((name, c_char * room) for name, room in (("unit", 16), ("field", 256), ("refused", 336), ("reason", 512),
                                                   ("did_you_mean", 128), ("message", 1024))),
    ]


class GaugepointError(Exception):
    """What was refused, and why. `value`, `lower` and `upper` are None when they are not given."""

    def __init__(self, name: str, error: _Error):
        super().__init__(error.message.decode())
        self.status, self.name = error.status, name
        for text in ("unit", "field", "refused", "reason", "did_you_mean"):
            setattr(self, text, getattr(error, text).decode())
        for number in ("value", "lower", "upper"):
            setattr(self, number, getattr(error, number) if getattr(error, f"has_{number}") else None)


class Library:
    """The C library at a path. OSError when it is missing, ImportError when it has another ABI."""

    def __init__(self, path: str):
        self._c = ctypes.CDLL(path)
        for text in (self._c.gaugepoint_version, self._c.gaugepoint_status_name):
            text.restype = c_char_p
        self._c.gaugepoint_text_free.argtypes, self._c.gaugepoint_text_free.restype = [c_void_p], None
        if self._c.gaugepoint_abi() != ABI:
            raise ImportError(f"{path} has ABI {self._c.gaugepoint_abi()}, this module is for ABI {ABI}")
        self.version = self._c.gaugepoint_version().decode()

    def assess(self, job: str | bytes, working: bool = False) -> str:
        """Report of a job document, both JSON."""
        return self._document("gaugepoint_job_assess", job, working)

    def measure(self, document: str | bytes, working: bool = False) -> str:
        """Report of a measurement document, both JSON."""
        return self._document("gaugepoint_measure", document, working)

    def fit(self, document: str | bytes, working: bool = False) -> str:
        """Report of a fit document, both JSON."""
        return self._document("gaugepoint_fit", document, working)

    def stack_evaluate(self, document: str | bytes, working: bool = False) -> str:
        """Report of a stack document, both JSON."""
        return self._document("gaugepoint_stack_evaluate", document, working)

    def check_sheet(self, sheet: str | bytes) -> str:
        """Report of a sheet document, both JSON."""
        return self._document("gaugepoint_sheet_check", sheet)

    def evaluate_budget(self, budget: str | bytes) -> str:
        """Report of a budget document, both JSON."""
        return self._document("gaugepoint_budget_evaluate", budget)

    def revisit(self, document: str | bytes) -> str:
        """Report of a revisit document, both JSON."""
        return self._document("gaugepoint_revisit", document)

    def what_if(self, document: str | bytes) -> str:
        """Report of a what-if document, both JSON."""
        return self._document("gaugepoint_what_if", document)

    def _document(self, function: str, document: str | bytes, *working: bool) -> str:
        text = document.encode() if isinstance(document, str) else document
        if not isinstance(text, bytes):
            raise TypeError("a document is str or bytes")
        report, length = c_void_p(), c_size_t()
        call = getattr(self._c, function)
        call.argtypes = [c_char_p, c_size_t, *(c_int32 for _ in working), POINTER(c_void_p), POINTER(c_size_t), POINTER(_Error)]
        error = _Error(sizeof(_Error))
        self._check(call(text, len(text), *(int(w) for w in working), byref(report), byref(length), byref(error)), error)
        try:
            return ctypes.string_at(report, length.value).decode()
        finally:
            self._c.gaugepoint_text_free(report)

    def _check(self, status: int, error: _Error) -> None:
        if status != 0:
            raise GaugepointError(self._c.gaugepoint_status_name(status).decode(), error)
