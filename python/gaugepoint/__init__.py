"""The dimensional mathematics of an engine rebuild: from raw readings to a decision for every cylinder.

`assess` runs a whole job and gives a `Report`, whose classes stand in `gaugepoint.report`. The flat functions give the
common numbers from plain floats; the unit is the suffix of every name. What is refused raises `InputError`.

The results rest on free thermal growth only and defer to the maker's service data, local codes and licensed practice.
"""

from gaugepoint._gaugepoint import (
    ERROR_KINDS,
    __version__,
    bench_clearance_mm,
    running_clearance_mm,
    size_at_20_mm,
)
from gaugepoint.decision import decide_mm
from gaugepoint.error import InputError
from gaugepoint.job import assess, job_schema, report_schema
from gaugepoint.report import Decision, Report

__all__ = [
    "ERROR_KINDS",
    "Decision",
    "InputError",
    "Report",
    "__version__",
    "assess",
    "bench_clearance_mm",
    "decide_mm",
    "job_schema",
    "report_schema",
    "running_clearance_mm",
    "size_at_20_mm",
]
