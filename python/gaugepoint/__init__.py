"""The dimensional mathematics of an engine rebuild: from raw readings to a decision for every cylinder.

`assess` runs a whole job and gives a `Report`, whose classes stand in `gaugepoint.report`. The flat functions give the
common numbers from plain floats; the unit is the suffix of every name. `gaugepoint.measurement` has statistics of readings,
gauge studies, bias and control charts, `gaugepoint.decision` the risks of decisions. `check_sheet` holds a printed sheet against itself.
`measure` evaluates readings with their gauges, whose report and presets stand in `gaugepoint.measuring`. What is refused raises `InputError`.

The results rest on free thermal growth only and defer to the maker's service data, local codes and licensed practice.
"""

from gaugepoint._gaugepoint import (
    ERROR_KINDS,
    __version__,
    bench_clearance_mm,
    running_clearance_mm,
    size_at_20_mm,
)
from gaugepoint.decision import (
    Gamma,
    Normal,
    Triangular,
    Uniform,
    acceptance,
    acceptance_for_risk,
    capability,
    decide_mm,
    global_risks,
)
from gaugepoint.error import InputError
from gaugepoint.job import assess, job_schema, report_schema
from gaugepoint.measurement import bias, control_chart, gauge_study, linearity, linearity_band, one_way, sample
from gaugepoint.measuring import (
    MeasurementReport,
    Preset,
    measure,
    measurement_report_schema,
    measurement_schema,
    presets,
)
from gaugepoint.report import Decision, Report
from gaugepoint.sheet import SheetReport, check_sheet, sheet_report_schema, sheet_schema

__all__ = [
    "ERROR_KINDS",
    "Decision",
    "Gamma",
    "InputError",
    "MeasurementReport",
    "Normal",
    "Preset",
    "Report",
    "SheetReport",
    "Triangular",
    "Uniform",
    "__version__",
    "acceptance",
    "acceptance_for_risk",
    "assess",
    "bench_clearance_mm",
    "bias",
    "capability",
    "check_sheet",
    "control_chart",
    "decide_mm",
    "gauge_study",
    "global_risks",
    "job_schema",
    "linearity",
    "linearity_band",
    "measure",
    "measurement_report_schema",
    "measurement_schema",
    "one_way",
    "presets",
    "report_schema",
    "running_clearance_mm",
    "sample",
    "sheet_report_schema",
    "sheet_schema",
    "size_at_20_mm",
]
