Attribute VB_Name = "GAUGEPOINT"
' The functions of gaugepoint in Excel: =GAUGEPOINT.BENCH_CLEARANCE_MM(B1,B2), under the names that they have in LibreOffice Calc.
'
' NEVER RUN IN EXCEL. Every Declare below was called as it stands here, from another language and on Linux. The lines between them and the cells were
' run by another Basic, with planted answers in place of the library. Before you trust it: =GAUGEPOINT.SELFTEST() must show ok, and a sheet whose
' results you know must show them.
'
' For Excel on Windows with 64 bits. gaugepoint_c.dll stands in the folder of the workbook, or in one of PATH.
'
' #VALUE! is no number: a blank cell, a text, TRUE, several cells. #NUM! is a number that the library refuses; GAUGEPOINT.WHY says why.
'
' Results rest on free thermal growth and on what was given. The maker's service data, local codes and licensed practice come first.
Option Explicit

#If Win64 Then
#Else
gaugepoint needs Excel with 64 bits
#End If

' Bytes of a GaugepointError, and where its message stands: of gaugepoint.h.
' What follows is generated from gaugepoint.h. The test that compares it also writes it.
Private Const ABI As Long = 1
Private Const ERROR_SIZE As Long = 2320
Private Const ERROR_MESSAGE As Long = 1296
Private Const RULE_SIMPLE_ACCEPTANCE As Long = 1
Private Const RULE_PROVEN As Long = 2
Private Const RULE_CONFORMANCE_PROBABILITY As Long = 3
Private Const RULE_EXPANDED_GUARD_BAND As Long = 4
Private Const RULE_SIMPLE_ACCEPTANCE_BY_RATIO As Long = 5
Private Const CONFORMITY_CONFORMS As Long = 1
Private Const CONFORMITY_DOES_NOT_CONFORM As Long = 2
Private Const CONFORMITY_NOT_PROVEN As Long = 3
Private Const CONFORMITY_NOT_JUDGED As Long = 4
Private Declare PtrSafe Function gaugepoint_size_at_20_mm Lib "gaugepoint_c.dll" (ByVal reading_mm As Double, _
    ByVal zero_error_mm As Double, ByVal gauge_temperature_c As Double, ByVal gauge_expansion_per_k As Double, _
    ByVal part_temperature_c As Double, ByVal part_expansion_per_k As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_bench_clearance_mm Lib "gaugepoint_c.dll" (ByVal bore_mm As Double, ByVal piston_mm As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_running_clearance_mm Lib "gaugepoint_c.dll" (ByVal bore_mm As Double, _
    ByVal bore_temperature_c As Double, ByVal bore_expansion_per_k As Double, ByVal piston_mm As Double, _
    ByVal piston_temperature_c As Double, ByVal piston_expansion_per_k As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_ring_gap_in_bore_mm Lib "gaugepoint_c.dll" (ByVal gap_mm As Double, ByVal gauge_mm As Double, _
    ByVal bore_mm As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_ring_least_cold_gap_mm Lib "gaugepoint_c.dll" (ByVal least_hot_gap_mm As Double, _
    ByVal bore_mm As Double, ByVal bore_temperature_c As Double, ByVal bore_expansion_per_k As Double, ByVal ring_temperature_c As Double, _
    ByVal ring_expansion_per_k As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_ring_side_clearance_mm Lib "gaugepoint_c.dll" (ByVal groove_width_mm As Double, _
    ByVal ring_width_mm As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_ring_back_clearance_mm Lib "gaugepoint_c.dll" (ByVal bore_mm As Double, _
    ByVal groove_root_mm As Double, ByVal ring_thickness_mm As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_ring_groove_wear_mm Lib "gaugepoint_c.dll" (ByVal groove_width_mm As Double, _
    ByVal new_groove_width_mm As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_keystone_groove_width_mm Lib "gaugepoint_c.dll" (ByVal over_pins_mm As Double, _
    ByVal pin_mm As Double, ByVal included_angle_deg As Double, ByVal at_diameter_mm As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_ring_gap_by_factor_mm Lib "gaugepoint_c.dll" (ByVal bore_mm As Double, _
    ByVal per_mille As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_rod_angle_mrad Lib "gaugepoint_c.dll" (ByVal deviation_mm As Double, ByVal base_mm As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_rod_skew_mm Lib "gaugepoint_c.dll" (ByVal angle_mrad As Double, ByVal length_mm As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_top_land_crevice_cm3 Lib "gaugepoint_c.dll" (ByVal bore_mm As Double, ByVal land_mm As Double, _
    ByVal land_height_mm As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_depth_in_bore_mm Lib "gaugepoint_c.dll" (ByVal deck_clearance_mm As Double, _
    ByVal crown_height_mm As Double, ByVal height_mm As Double, ByVal travel_mm As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_inch_to_mm Lib "gaugepoint_c.dll" (ByVal length_inch As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_mm_to_inch Lib "gaugepoint_c.dll" (ByVal length_mm As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_thou_to_mm Lib "gaugepoint_c.dll" (ByVal length_thou As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_fahrenheit_to_c Lib "gaugepoint_c.dll" (ByVal temperature_fahrenheit As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_c_to_fahrenheit Lib "gaugepoint_c.dll" (ByVal temperature_c As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_per_fahrenheit_to_per_k Lib "gaugepoint_c.dll" (ByVal expansion_per_fahrenheit As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_ring_hot_gap_mm Lib "gaugepoint_c.dll" (ByVal gap_mm As Double, ByVal bore_mm As Double, _
    ByVal bore_temperature_c As Double, ByVal bore_expansion_per_k As Double, ByVal ring_temperature_c As Double, _
    ByVal ring_expansion_per_k As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_pin_cold_clearance_mm Lib "gaugepoint_c.dll" (ByVal hole_mm As Double, ByVal pin_mm As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_pin_hot_clearance_mm Lib "gaugepoint_c.dll" (ByVal hole_mm As Double, _
    ByVal hole_temperature_c As Double, ByVal hole_expansion_per_k As Double, ByVal pin_mm As Double, ByVal pin_temperature_c As Double, _
    ByVal pin_expansion_per_k As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_press_fit_pressure_mpa Lib "gaugepoint_c.dll" (ByVal pin_mm As Double, _
    ByVal pin_hole_mm As Double, ByVal eye_mm As Double, ByVal interference_mm As Double, ByVal smoothing_mm As Double, _
    ByVal pin_modulus_mpa As Double, ByVal pin_poisson As Double, ByVal eye_modulus_mpa As Double, ByVal eye_poisson As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_press_fit_force_n Lib "gaugepoint_c.dll" (ByVal pin_mm As Double, ByVal pin_hole_mm As Double, _
    ByVal eye_mm As Double, ByVal width_mm As Double, ByVal interference_mm As Double, ByVal smoothing_mm As Double, _
    ByVal friction As Double, ByVal pin_modulus_mpa As Double, ByVal pin_poisson As Double, ByVal eye_modulus_mpa As Double, _
    ByVal eye_poisson As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_press_fit_torque_nm Lib "gaugepoint_c.dll" (ByVal pin_mm As Double, _
    ByVal pin_hole_mm As Double, ByVal eye_mm As Double, ByVal width_mm As Double, ByVal interference_mm As Double, _
    ByVal smoothing_mm As Double, ByVal friction As Double, ByVal pin_modulus_mpa As Double, ByVal pin_poisson As Double, _
    ByVal eye_modulus_mpa As Double, ByVal eye_poisson As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_assembly_temperature_c Lib "gaugepoint_c.dll" (ByVal diameter_mm As Double, _
    ByVal interference_mm As Double, ByVal clearance_mm As Double, ByVal expansion_per_k As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_piston_deck_clearance_mm Lib "gaugepoint_c.dll" (ByVal block_height_mm As Double, _
    ByVal stroke_mm As Double, ByVal rod_mm As Double, ByVal compression_height_mm As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_swept_volume_cm3 Lib "gaugepoint_c.dll" (ByVal bore_mm As Double, ByVal stroke_mm As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_static_compression_ratio Lib "gaugepoint_c.dll" (ByVal bore_mm As Double, _
    ByVal stroke_mm As Double, ByVal head_cm3 As Double, ByVal gasket_bore_mm As Double, ByVal gasket_mm As Double, _
    ByVal deck_clearance_mm As Double, ByVal crown_cm3 As Double, ByVal crevice_cm3 As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_piston_travel_mm Lib "gaugepoint_c.dll" (ByVal crank_radius_mm As Double, _
    ByVal rod_mm As Double, ByVal pin_offset_mm As Double, ByVal crank_angle_deg As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_finish_size_mm Lib "gaugepoint_c.dll" (ByVal piston_mm As Double, ByVal clearance_mm As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_boring_size_mm Lib "gaugepoint_c.dll" (ByVal piston_mm As Double, ByVal clearance_mm As Double, _
    ByVal honing_mm As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_bore_size_at_20_mm Lib "gaugepoint_c.dll" (ByVal deviation_mm As Double, _
    ByVal setting_mm As Double, ByVal ring_temperature_c As Double, ByVal ring_expansion_per_k As Double, _
    ByVal set_temperature_c As Double, ByVal set_expansion_per_k As Double, ByVal used_temperature_c As Double, _
    ByVal used_expansion_per_k As Double, ByVal block_temperature_c As Double, ByVal block_expansion_per_k As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_size_at_temperature_mm Lib "gaugepoint_c.dll" (ByVal size_mm As Double, _
    ByVal temperature_c As Double, ByVal expansion_per_k As Double, ByRef out As Double, ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_probability_of_conformity Lib "gaugepoint_c.dll" (ByVal value_mm As Double, _
    ByVal standard_uncertainty_mm As Double, ByVal lower_mm As Double, ByVal upper_mm As Double, ByRef out As Double, _
    ByVal details As LongPtr) As Long
Private Declare PtrSafe Function gaugepoint_coverage_factor Lib "gaugepoint_c.dll" (ByVal probability As Double, ByVal dof As Double, _
    ByRef out As Double, ByVal details As LongPtr) As Long
' Here ends what is generated.

Private Declare PtrSafe Function gaugepoint_abi Lib "gaugepoint_c.dll" () As Long
Private Declare PtrSafe Function gaugepoint_version Lib "gaugepoint_c.dll" () As LongPtr
Private Declare PtrSafe Function gaugepoint_decide_mm Lib "gaugepoint_c.dll" (ByVal value_mm As Double, _
    ByVal standard_uncertainty_mm As Double, ByVal has_lower As Long, ByVal lower_mm As Double, ByVal has_upper As Long, _
    ByVal upper_mm As Double, ByVal rule As Long, ByVal at_least As Double, ByRef result As Long, ByRef probability As Double, _
    ByVal details As LongPtr) As Long

Private Declare PtrSafe Function LoadLibraryW Lib "kernel32" (ByVal file As LongPtr) As LongPtr
Private Declare PtrSafe Function MultiByteToWideChar Lib "kernel32" (ByVal page As Long, ByVal flags As Long, ByVal bytes As LongPtr, _
    ByVal count As Long, ByVal text As LongPtr, ByVal room As Long) As Long

Private Const UTF8 As Long = 65001

' Version of the library.
Public Function VERSION() As Variant
    On Error GoTo Failed
    FindLibrary
    VERSION = FromUtf8(gaugepoint_version())
    Exit Function
Failed:
    VERSION = CVErr(xlErrNA)
End Function

' ok, or what is wrong: the library is looked for, and computes worked examples.
Public Function SELFTEST() As Variant
    On Error GoTo Failed
    FindLibrary
    If gaugepoint_abi() <> ABI Then
        SELFTEST = "the library has another ABI"
    ElseIf Not Near(SIZE_AT_20_MM(86#, 0#, 20#, 0.0000115, 30#, 0.000021), 85.98194379, 0.000000005) Then
        SELFTEST = "size_at_20_mm is wrong"
    ElseIf Not Near(BENCH_CLEARANCE_MM(86.035, 86#), 0.035, 0.00000000000002) Then
        SELFTEST = "bench_clearance_mm is wrong"
    ElseIf Not IsError(BENCH_CLEARANCE_MM(0#, 86#)) Then
        SELFTEST = "a bore of 0 is accepted"
    Else
        SELFTEST = "ok"
    End If
    Exit Function
Failed:
    SELFTEST = "the library is missing: " & Err.Description
End Function

' Judges a value with its standard uncertainty against its limits: conforms, does not conform, or not proven. The error is normal. A limit that there
' is not is the word none; the text "0" is 0, as in Calc. at_least is what the last two rules ask for.
Public Function DECIDE(ByVal value_mm As Variant, ByVal standard_uncertainty_mm As Variant, ByVal lower_mm As Variant, _
    ByVal upper_mm As Variant, ByVal rule As Variant, Optional ByVal at_least As Variant) As Variant
    If IsMissing(at_least) Then at_least = Empty
    DECIDE = Decided(Array(value_mm, standard_uncertainty_mm, lower_mm, upper_mm, rule, at_least), 0)
End Function

' Why a function shows an error, in one line: what was refused, what is accepted, and what was probably meant.
Public Function WHY(ByVal which As String, ParamArray arguments() As Variant) As String
    Dim details(0 To ERROR_SIZE - 1) As Byte, numbers() As Double, given As Variant, place As Long, out As Double
    On Error GoTo Failed
    FindLibrary
    details(0) = ERROR_SIZE And 255
    details(1) = ERROR_SIZE \ 256
    which = Replace(UCase$(which), "GAUGEPOINT.", "")
    If which = "DECIDE" Then
        given = Array(Empty, Empty, Empty, Empty, Empty, Empty)
        For place = 0 To UBound(arguments)
            given(place) = Content(arguments(place))
        Next
        If Not IsError(Decided(given, VarPtr(details(0)))) Then
            WHY = "nothing is refused"
            Exit Function
        End If
    Else
        ReDim numbers(0 To UBound(arguments))
        For place = 0 To UBound(arguments)
            If Not Number(Content(arguments(place)), numbers(place)) Then
                WHY = "argument " & (place + 1) & " is not one number"
                Exit Function
            End If
        Next
        If Called(which, numbers, out, VarPtr(details(0))) = 0 Then
            WHY = "nothing is refused"
            Exit Function
        End If
    End If
    WHY = FromUtf8(VarPtr(details(ERROR_MESSAGE)))
    If WHY = "" Then WHY = "a number is missing or a text, or there is no such rule"
    Exit Function
Failed:
    WHY = "the library is missing, an argument is, or there is no such function: " & Err.Description
End Function

' Loads the library from the folder of the workbook; where it is not there, Windows looks in PATH when it is called.
Private Sub FindLibrary()
    Static tried As Boolean
    If Not tried Then LoadLibraryW StrPtr(ThisWorkbook.Path & "\gaugepoint_c.dll")
    tried = True
End Sub

Private Function FromUtf8(ByVal text As LongPtr) As String
    Dim count As Long
    ' with its NUL, for which a String has room
    count = MultiByteToWideChar(UTF8, 0, text, -1, 0, 0)
    If count < 2 Then Exit Function
    FromUtf8 = String$(count - 1, " ")
    MultiByteToWideChar UTF8, 0, text, -1, StrPtr(FromUtf8), count
End Function

Private Function Near(ByVal found As Variant, ByVal wanted As Double, ByVal tolerance As Double) As Boolean
    If Not IsError(found) Then Near = Abs(found - wanted) <= tolerance
End Function

' What stands in a cell, or what is given itself.
Private Function Content(ByVal cell As Variant) As Variant
    If TypeName(cell) = "Range" Then Content = ContentOf(cell) Else Content = cell
End Function

' What stands in one cell, without the formats of dates and money.
Private Function ContentOf(ByVal cell As Object) As Variant
    If cell.CountLarge = 1 Then ContentOf = cell.Value2 Else ContentOf = CVErr(xlErrValue)
End Function

' Is it one number? A blank cell, a text, TRUE and an error are none.
Private Function Number(ByVal given As Variant, ByRef out As Double) As Boolean
    Select Case VarType(given)
    Case vbDouble, vbInteger, vbLong
        out = given
        Number = True
    End Select
End Function

' As Number; the text "0" is 0.
Private Function Meant(ByVal given As Variant, ByRef out As Double) As Boolean
    Meant = Number(given, out)
    If VarType(given) = vbString Then Meant = (given = "0")
End Function

' As Meant; the word none is no limit.
Private Function Limit(ByVal given As Variant, ByRef has As Long, ByRef out As Double) As Boolean
    has = 1
    Limit = Meant(given, out)
    If VarType(given) <> vbString Then Exit Function
    If given = "none" Then
        has = 0
        Limit = True
    End If
End Function

' A function of the library of one row.
Private Function Row(ByVal which As String, ParamArray cells() As Variant) As Variant
    Dim numbers() As Double, place As Long, given As Variant, out As Double
    ReDim numbers(0 To UBound(cells))
    For place = 0 To UBound(cells)
        given = Content(cells(place))
        If Not Number(given, numbers(place)) Then
            Row = IIf(IsError(given), given, CVErr(xlErrValue))
            Exit Function
        End If
    Next
    On Error GoTo Failed
    FindLibrary
    If Called(which, numbers, out, 0) = 0 Then Row = out Else Row = CVErr(xlErrNum)
    Exit Function
Failed:
    Row = CVErr(xlErrNA)
End Function

' A conformity as a word, or an error.
Private Function Decided(ByVal given As Variant, ByVal details As LongPtr) As Variant
    Dim value As Double, deviation As Double, lower As Double, upper As Double, least As Double, probability As Double
    Dim has_lower As Long, has_upper As Long, rule As Long, result As Long, place As Long
    Decided = CVErr(xlErrValue)
    For place = 0 To 5
        given(place) = Content(given(place))
        If IsError(given(place)) Then
            Decided = given(place)
            Exit Function
        End If
    Next
    If Not (Meant(given(0), value) And Meant(given(1), deviation)) Then Exit Function
    If Not (Limit(given(2), has_lower, lower) And Limit(given(3), has_upper, upper)) Then Exit Function
    rule = RuleOf(given(4))
    If rule = 0 Then Exit Function
    ' a rule that asks for nothing is given a number that it does not look at
    least = 0.95
    If rule = RULE_CONFORMANCE_PROBABILITY Or rule = RULE_SIMPLE_ACCEPTANCE_BY_RATIO Then
        If Not Number(given(5), least) Then Exit Function
    End If
    On Error GoTo Failed
    FindLibrary
    If gaugepoint_decide_mm(value, deviation, has_lower, lower, has_upper, upper, rule, least, result, probability, details) = 0 Then
        Decided = ConformityOf(result)
    Else
        Decided = CVErr(xlErrNum)
    End If
    Exit Function
Failed:
    Decided = CVErr(xlErrNA)
End Function

' What follows is generated from gaugepoint.h, too. The test that compares it also writes it.
Private Function RuleOf(ByVal given As Variant) As Long
    Select Case given
    Case "simple acceptance": RuleOf = RULE_SIMPLE_ACCEPTANCE
    Case "proven": RuleOf = RULE_PROVEN
    Case "conformance probability": RuleOf = RULE_CONFORMANCE_PROBABILITY
    Case "expanded guard band": RuleOf = RULE_EXPANDED_GUARD_BAND
    Case "simple acceptance by ratio": RuleOf = RULE_SIMPLE_ACCEPTANCE_BY_RATIO
    End Select
End Function

Private Function ConformityOf(ByVal given As Variant) As String
    Select Case given
    Case CONFORMITY_CONFORMS: ConformityOf = "conforms"
    Case CONFORMITY_DOES_NOT_CONFORM: ConformityOf = "does not conform"
    Case CONFORMITY_NOT_PROVEN: ConformityOf = "not proven"
    Case CONFORMITY_NOT_JUDGED: ConformityOf = "not judged"
    End Select
End Function

' A function of the library by its name.
Private Function Called(ByVal which As String, ByRef n() As Double, ByRef out As Double, ByVal details As LongPtr) As Long
    Select Case which
    Case "SIZE_AT_20_MM"
        Called = gaugepoint_size_at_20_mm(n(0), n(1), n(2), n(3), n(4), n(5), out, details)
    Case "BENCH_CLEARANCE_MM"
        Called = gaugepoint_bench_clearance_mm(n(0), n(1), out, details)
    Case "RUNNING_CLEARANCE_MM"
        Called = gaugepoint_running_clearance_mm(n(0), n(1), n(2), n(3), n(4), n(5), out, details)
    Case "RING_GAP_IN_BORE_MM"
        Called = gaugepoint_ring_gap_in_bore_mm(n(0), n(1), n(2), out, details)
    Case "RING_LEAST_COLD_GAP_MM"
        Called = gaugepoint_ring_least_cold_gap_mm(n(0), n(1), n(2), n(3), n(4), n(5), out, details)
    Case "RING_SIDE_CLEARANCE_MM"
        Called = gaugepoint_ring_side_clearance_mm(n(0), n(1), out, details)
    Case "RING_BACK_CLEARANCE_MM"
        Called = gaugepoint_ring_back_clearance_mm(n(0), n(1), n(2), out, details)
    Case "RING_GROOVE_WEAR_MM"
        Called = gaugepoint_ring_groove_wear_mm(n(0), n(1), out, details)
    Case "KEYSTONE_GROOVE_WIDTH_MM"
        Called = gaugepoint_keystone_groove_width_mm(n(0), n(1), n(2), n(3), out, details)
    Case "RING_GAP_BY_FACTOR_MM"
        Called = gaugepoint_ring_gap_by_factor_mm(n(0), n(1), out, details)
    Case "ROD_ANGLE_MRAD"
        Called = gaugepoint_rod_angle_mrad(n(0), n(1), out, details)
    Case "ROD_SKEW_MM"
        Called = gaugepoint_rod_skew_mm(n(0), n(1), out, details)
    Case "TOP_LAND_CREVICE_CM3"
        Called = gaugepoint_top_land_crevice_cm3(n(0), n(1), n(2), out, details)
    Case "DEPTH_IN_BORE_MM"
        Called = gaugepoint_depth_in_bore_mm(n(0), n(1), n(2), n(3), out, details)
    Case "INCH_TO_MM"
        Called = gaugepoint_inch_to_mm(n(0), out, details)
    Case "MM_TO_INCH"
        Called = gaugepoint_mm_to_inch(n(0), out, details)
    Case "THOU_TO_MM"
        Called = gaugepoint_thou_to_mm(n(0), out, details)
    Case "FAHRENHEIT_TO_C"
        Called = gaugepoint_fahrenheit_to_c(n(0), out, details)
    Case "C_TO_FAHRENHEIT"
        Called = gaugepoint_c_to_fahrenheit(n(0), out, details)
    Case "PER_FAHRENHEIT_TO_PER_K"
        Called = gaugepoint_per_fahrenheit_to_per_k(n(0), out, details)
    Case "RING_HOT_GAP_MM"
        Called = gaugepoint_ring_hot_gap_mm(n(0), n(1), n(2), n(3), n(4), n(5), out, details)
    Case "PIN_COLD_CLEARANCE_MM"
        Called = gaugepoint_pin_cold_clearance_mm(n(0), n(1), out, details)
    Case "PIN_HOT_CLEARANCE_MM"
        Called = gaugepoint_pin_hot_clearance_mm(n(0), n(1), n(2), n(3), n(4), n(5), out, details)
    Case "PRESS_FIT_PRESSURE_MPA"
        Called = gaugepoint_press_fit_pressure_mpa(n(0), n(1), n(2), n(3), n(4), n(5), n(6), n(7), n(8), out, details)
    Case "PRESS_FIT_FORCE_N"
        Called = gaugepoint_press_fit_force_n(n(0), n(1), n(2), n(3), n(4), n(5), n(6), n(7), n(8), n(9), n(10), out, details)
    Case "PRESS_FIT_TORQUE_NM"
        Called = gaugepoint_press_fit_torque_nm(n(0), n(1), n(2), n(3), n(4), n(5), n(6), n(7), n(8), n(9), n(10), out, details)
    Case "ASSEMBLY_TEMPERATURE_C"
        Called = gaugepoint_assembly_temperature_c(n(0), n(1), n(2), n(3), out, details)
    Case "PISTON_DECK_CLEARANCE_MM"
        Called = gaugepoint_piston_deck_clearance_mm(n(0), n(1), n(2), n(3), out, details)
    Case "SWEPT_VOLUME_CM3"
        Called = gaugepoint_swept_volume_cm3(n(0), n(1), out, details)
    Case "STATIC_COMPRESSION_RATIO"
        Called = gaugepoint_static_compression_ratio(n(0), n(1), n(2), n(3), n(4), n(5), n(6), n(7), out, details)
    Case "PISTON_TRAVEL_MM"
        Called = gaugepoint_piston_travel_mm(n(0), n(1), n(2), n(3), out, details)
    Case "FINISH_SIZE_MM"
        Called = gaugepoint_finish_size_mm(n(0), n(1), out, details)
    Case "BORING_SIZE_MM"
        Called = gaugepoint_boring_size_mm(n(0), n(1), n(2), out, details)
    Case "BORE_SIZE_AT_20_MM"
        Called = gaugepoint_bore_size_at_20_mm(n(0), n(1), n(2), n(3), n(4), n(5), n(6), n(7), n(8), n(9), out, details)
    Case "SIZE_AT_TEMPERATURE_MM"
        Called = gaugepoint_size_at_temperature_mm(n(0), n(1), n(2), out, details)
    Case "PROBABILITY_OF_CONFORMITY"
        Called = gaugepoint_probability_of_conformity(n(0), n(1), n(2), n(3), out, details)
    Case "COVERAGE_FACTOR"
        Called = gaugepoint_coverage_factor(n(0), n(1), out, details)
    Case Else: Err.Raise 5
    End Select
End Function

' Size at 20 C from the reading of a micrometer or caliper, in mm.
'
' (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from
' -5 C to 60 C, mean coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and
' the definition of strain.
Public Function SIZE_AT_20_MM(ByVal reading_mm As Variant, ByVal zero_error_mm As Variant, ByVal gauge_temperature_c As Variant, _
    ByVal gauge_expansion_per_k As Variant, ByVal part_temperature_c As Variant, ByVal part_expansion_per_k As Variant) As Variant
    SIZE_AT_20_MM = Row("SIZE_AT_20_MM", reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, _
    part_expansion_per_k)
End Function

' Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.
Public Function BENCH_CLEARANCE_MM(ByVal bore_mm As Variant, ByVal piston_mm As Variant) As Variant
    BENCH_CLEARANCE_MM = Row("BENCH_CLEARANCE_MM", bore_mm, piston_mm)
End Function

' Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
'
' bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to
' 450 C. It is not a verdict: skirts are elastic, and engines run for years with a free clearance
' below zero. Source: definition of strain.
Public Function RUNNING_CLEARANCE_MM(ByVal bore_mm As Variant, ByVal bore_temperature_c As Variant, ByVal bore_expansion_per_k As Variant, _
    ByVal piston_mm As Variant, ByVal piston_temperature_c As Variant, ByVal piston_expansion_per_k As Variant) As Variant
    RUNNING_CLEARANCE_MM = Row("RUNNING_CLEARANCE_MM", bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, _
    piston_expansion_per_k)
End Function

' End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi
' (bore - gauge).
'
' Refused when gauge and bore are more than 2 % apart.
Public Function RING_GAP_IN_BORE_MM(ByVal gap_mm As Variant, ByVal gauge_mm As Variant, ByVal bore_mm As Variant) As Variant
    RING_GAP_IN_BORE_MM = Row("RING_GAP_IN_BORE_MM", gap_mm, gauge_mm, bore_mm)
End Function

' Least cold gap, in mm, that leaves least_hot_gap_mm with bore and ring at their temperatures.
'
' Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
Public Function RING_LEAST_COLD_GAP_MM(ByVal least_hot_gap_mm As Variant, ByVal bore_mm As Variant, ByVal bore_temperature_c As Variant, _
    ByVal bore_expansion_per_k As Variant, ByVal ring_temperature_c As Variant, ByVal ring_expansion_per_k As Variant) As Variant
    RING_LEAST_COLD_GAP_MM = Row("RING_LEAST_COLD_GAP_MM", least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, _
    ring_temperature_c, ring_expansion_per_k)
End Function

' Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm
' it is another ring.
Public Function RING_SIDE_CLEARANCE_MM(ByVal groove_width_mm As Variant, ByVal ring_width_mm As Variant) As Variant
    RING_SIDE_CLEARANCE_MM = Row("RING_SIDE_CLEARANCE_MM", groove_width_mm, ring_width_mm)
End Function

' Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.
'
' With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the
' land.
Public Function RING_BACK_CLEARANCE_MM(ByVal bore_mm As Variant, ByVal groove_root_mm As Variant, ByVal ring_thickness_mm As Variant) As Variant
    RING_BACK_CLEARANCE_MM = Row("RING_BACK_CLEARANCE_MM", bore_mm, groove_root_mm, ring_thickness_mm)
End Function

' Wear of a groove, in mm: its width where it is widest less its width when new.
Public Function RING_GROOVE_WEAR_MM(ByVal groove_width_mm As Variant, ByVal new_groove_width_mm As Variant) As Variant
    RING_GROOVE_WEAR_MM = Row("RING_GROOVE_WEAR_MM", groove_width_mm, new_groove_width_mm)
End Function

' Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two
' pins that lie in it opposite each other.
Public Function KEYSTONE_GROOVE_WIDTH_MM(ByVal over_pins_mm As Variant, ByVal pin_mm As Variant, ByVal included_angle_deg As Variant, _
    ByVal at_diameter_mm As Variant) As Variant
    KEYSTONE_GROOVE_WIDTH_MM = Row("KEYSTONE_GROOVE_WIDTH_MM", over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)
End Function

' End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14.
Public Function RING_GAP_BY_FACTOR_MM(ByVal bore_mm As Variant, ByVal per_mille As Variant) As Variant
    RING_GAP_BY_FACTOR_MM = Row("RING_GAP_BY_FACTOR_MM", bore_mm, per_mille)
End Function

' Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.
Public Function ROD_ANGLE_MRAD(ByVal deviation_mm As Variant, ByVal base_mm As Variant) As Variant
    ROD_ANGLE_MRAD = Row("ROD_ANGLE_MRAD", deviation_mm, base_mm)
End Function

' What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.
Public Function ROD_SKEW_MM(ByVal angle_mrad As Variant, ByVal length_mm As Variant) As Variant
    ROD_SKEW_MM = Row("ROD_SKEW_MM", angle_mrad, length_mm)
End Function

' Volume in cm3 between top land and bore, down to the first ring.
Public Function TOP_LAND_CREVICE_CM3(ByVal bore_mm As Variant, ByVal land_mm As Variant, ByVal land_height_mm As Variant) As Variant
    TOP_LAND_CREVICE_CM3 = Row("TOP_LAND_CREVICE_CM3", bore_mm, land_mm, land_height_mm)
End Function

' How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel;
' heights up from the bottom edge of the skirt.
Public Function DEPTH_IN_BORE_MM(ByVal deck_clearance_mm As Variant, ByVal crown_height_mm As Variant, ByVal height_mm As Variant, _
    ByVal travel_mm As Variant) As Variant
    DEPTH_IN_BORE_MM = Row("DEPTH_IN_BORE_MM", deck_clearance_mm, crown_height_mm, height_mm, travel_mm)
End Function

' Length in mm from inches, -400 in to 400 in.
'
' A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is
' 61.28004 mm. Source: NIST SP 811 (2008), appendix B.
Public Function INCH_TO_MM(ByVal length_inch As Variant) As Variant
    INCH_TO_MM = Row("INCH_TO_MM", length_inch)
End Function

' Length in inches from mm, -10160 mm to 10160 mm.
'
' A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
' 811 (2008), appendix B.
Public Function MM_TO_INCH(ByVal length_mm As Variant) As Variant
    MM_TO_INCH = Row("MM_TO_INCH", length_mm)
End Function

' Length in mm from thousandths of an inch, -400000 thou to 400000 thou.
'
' A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
' 811 (2008), appendix B.
Public Function THOU_TO_MM(ByVal length_thou As Variant) As Variant
    THOU_TO_MM = Row("THOU_TO_MM", length_thou)
End Function

' Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of
' temperatures is another thing.
'
' A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C.
' Source: NIST SP 811 (2008), appendix B.
Public Function FAHRENHEIT_TO_C(ByVal temperature_fahrenheit As Variant) As Variant
    FAHRENHEIT_TO_C = Row("FAHRENHEIT_TO_C", temperature_fahrenheit)
End Function

' Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of
' temperatures is another thing.
'
' A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
' 811 (2008), appendix B.
Public Function C_TO_FAHRENHEIT(ByVal temperature_c As Variant) As Variant
    C_TO_FAHRENHEIT = Row("C_TO_FAHRENHEIT", temperature_c)
End Function

' Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree
' Fahrenheit: 1.8 times as much.
'
' A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
' 811 (2008), appendix B.
Public Function PER_FAHRENHEIT_TO_PER_K(ByVal expansion_per_fahrenheit As Variant) As Variant
    PER_FAHRENHEIT_TO_PER_K = Row("PER_FAHRENHEIT_TO_PER_K", expansion_per_fahrenheit)
End Function

' End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below
' zero the ends butt.
'
' gap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot
' circumference of the bore less the hot length of the ring.
Public Function RING_HOT_GAP_MM(ByVal gap_mm As Variant, ByVal bore_mm As Variant, ByVal bore_temperature_c As Variant, _
    ByVal bore_expansion_per_k As Variant, ByVal ring_temperature_c As Variant, ByVal ring_expansion_per_k As Variant) As Variant
    RING_HOT_GAP_MM = Row("RING_HOT_GAP_MM", gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, _
    ring_expansion_per_k)
End Function

' Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is
' interference.
'
' Refused when it is not between -0.15 mm and 0.2 mm: another pin.
Public Function PIN_COLD_CLEARANCE_MM(ByVal hole_mm As Variant, ByVal pin_mm As Variant) As Variant
    PIN_COLD_CLEARANCE_MM = Row("PIN_COLD_CLEARANCE_MM", hole_mm, pin_mm)
End Function

' Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20
' C.
'
' hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A
' pressed bush grows by the coefficient of what holds it. Source: definition of strain.
Public Function PIN_HOT_CLEARANCE_MM(ByVal hole_mm As Variant, ByVal hole_temperature_c As Variant, ByVal hole_expansion_per_k As Variant, _
    ByVal pin_mm As Variant, ByVal pin_temperature_c As Variant, ByVal pin_expansion_per_k As Variant) As Variant
    PIN_HOT_CLEARANCE_MM = Row("PIN_HOT_CLEARANCE_MM", hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, _
    pin_expansion_per_k)
End Function

' Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the
' interference.
'
' Sizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free
' ends.
Public Function PRESS_FIT_PRESSURE_MPA(ByVal pin_mm As Variant, ByVal pin_hole_mm As Variant, ByVal eye_mm As Variant, _
    ByVal interference_mm As Variant, ByVal smoothing_mm As Variant, ByVal pin_modulus_mpa As Variant, ByVal pin_poisson As Variant, _
    ByVal eye_modulus_mpa As Variant, ByVal eye_poisson As Variant) As Variant
    PRESS_FIT_PRESSURE_MPA = Row("PRESS_FIT_PRESSURE_MPA", pin_mm, pin_hole_mm, eye_mm, interference_mm, smoothing_mm, pin_modulus_mpa, _
    pin_poisson, eye_modulus_mpa, eye_poisson)
End Function

' Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.
'
' The pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.
Public Function PRESS_FIT_FORCE_N(ByVal pin_mm As Variant, ByVal pin_hole_mm As Variant, ByVal eye_mm As Variant, _
    ByVal width_mm As Variant, ByVal interference_mm As Variant, ByVal smoothing_mm As Variant, ByVal friction As Variant, _
    ByVal pin_modulus_mpa As Variant, ByVal pin_poisson As Variant, ByVal eye_modulus_mpa As Variant, ByVal eye_poisson As Variant) As Variant
    PRESS_FIT_FORCE_N = Row("PRESS_FIT_FORCE_N", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, _
    pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)
End Function

' Torque in N m at which a pin pressed into an eye slips: force pin / 2.
'
' The force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.
Public Function PRESS_FIT_TORQUE_NM(ByVal pin_mm As Variant, ByVal pin_hole_mm As Variant, ByVal eye_mm As Variant, _
    ByVal width_mm As Variant, ByVal interference_mm As Variant, ByVal smoothing_mm As Variant, ByVal friction As Variant, _
    ByVal pin_modulus_mpa As Variant, ByVal pin_poisson As Variant, ByVal eye_modulus_mpa As Variant, ByVal eye_poisson As Variant) As Variant
    PRESS_FIT_TORQUE_NM = Row("PRESS_FIT_TORQUE_NM", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, _
    pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)
End Function

' Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole
' opens by the interference and a clearance: 20 + (interference + clearance) / (a diameter).
'
' Clean steel colours from 249 C: too much heat. Source: free growth.
Public Function ASSEMBLY_TEMPERATURE_C(ByVal diameter_mm As Variant, ByVal interference_mm As Variant, ByVal clearance_mm As Variant, _
    ByVal expansion_per_k As Variant) As Variant
    ASSEMBLY_TEMPERATURE_C = Row("ASSEMBLY_TEMPERATURE_C", diameter_mm, interference_mm, clearance_mm, expansion_per_k)
End Function

' From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression
' height); negative when the crown stands above the deck.
Public Function PISTON_DECK_CLEARANCE_MM(ByVal block_height_mm As Variant, ByVal stroke_mm As Variant, ByVal rod_mm As Variant, _
    ByVal compression_height_mm As Variant) As Variant
    PISTON_DECK_CLEARANCE_MM = Row("PISTON_DECK_CLEARANCE_MM", block_height_mm, stroke_mm, rod_mm, compression_height_mm)
End Function

' Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4.
Public Function SWEPT_VOLUME_CM3(ByVal bore_mm As Variant, ByVal stroke_mm As Variant) As Variant
    SWEPT_VOLUME_CM3 = Row("SWEPT_VOLUME_CM3", bore_mm, stroke_mm)
End Function

' Compression ratio, a pure number: (swept + clearance volume) / clearance volume.
'
' A dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the
' crevice at the top land out, as is usual. Refused when nothing is left above the piston.
Public Function STATIC_COMPRESSION_RATIO(ByVal bore_mm As Variant, ByVal stroke_mm As Variant, ByVal head_cm3 As Variant, _
    ByVal gasket_bore_mm As Variant, ByVal gasket_mm As Variant, ByVal deck_clearance_mm As Variant, ByVal crown_cm3 As Variant, _
    ByVal crevice_cm3 As Variant) As Variant
    STATIC_COMPRESSION_RATIO = Row("STATIC_COMPRESSION_RATIO", bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, deck_clearance_mm, _
    crown_cm3, crevice_cm3)
End Function

' Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.
'
' The angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major
' thrust side is positive. Source: slider-crank with an offset pin.
Public Function PISTON_TRAVEL_MM(ByVal crank_radius_mm As Variant, ByVal rod_mm As Variant, ByVal pin_offset_mm As Variant, _
    ByVal crank_angle_deg As Variant) As Variant
    PISTON_TRAVEL_MM = Row("PISTON_TRAVEL_MM", crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg)
End Function

' Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the
' bench.
Public Function FINISH_SIZE_MM(ByVal piston_mm As Variant, ByVal clearance_mm As Variant) As Variant
    FINISH_SIZE_MM = Row("FINISH_SIZE_MM", piston_mm, clearance_mm)
End Function

' Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench
' - what is left for the hone.
Public Function BORING_SIZE_MM(ByVal piston_mm As Variant, ByVal clearance_mm As Variant, ByVal honing_mm As Variant) As Variant
    BORING_SIZE_MM = Row("BORING_SIZE_MM", piston_mm, clearance_mm, honing_mm)
End Function

' Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive
' when the bore is larger.
'
' (setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) +
' deviation) / (1 + a_block (t_block - 20)): the gauge when it was set, and when it is used.
' Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.
Public Function BORE_SIZE_AT_20_MM(ByVal deviation_mm As Variant, ByVal setting_mm As Variant, ByVal ring_temperature_c As Variant, _
    ByVal ring_expansion_per_k As Variant, ByVal set_temperature_c As Variant, ByVal set_expansion_per_k As Variant, _
    ByVal used_temperature_c As Variant, ByVal used_expansion_per_k As Variant, ByVal block_temperature_c As Variant, _
    ByVal block_expansion_per_k As Variant) As Variant
    BORE_SIZE_AT_20_MM = Row("BORE_SIZE_AT_20_MM", deviation_mm, setting_mm, ring_temperature_c, ring_expansion_per_k, set_temperature_c, _
    set_expansion_per_k, used_temperature_c, used_expansion_per_k, block_temperature_c, block_expansion_per_k)
End Function

' Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).
'
' Temperatures from -40 C to 450 C. Source: definition of strain.
Public Function SIZE_AT_TEMPERATURE_MM(ByVal size_mm As Variant, ByVal temperature_c As Variant, ByVal expansion_per_k As Variant) As Variant
    SIZE_AT_TEMPERATURE_MM = Row("SIZE_AT_TEMPERATURE_MM", size_mm, temperature_c, expansion_per_k)
End Function

' Probability that the true value lies within two limits, for a value with a normal error of a
' standard uncertainty.
'
' A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
Public Function PROBABILITY_OF_CONFORMITY(ByVal value_mm As Variant, ByVal standard_uncertainty_mm As Variant, ByVal lower_mm As Variant, _
    ByVal upper_mm As Variant) As Variant
    PROBABILITY_OF_CONFORMITY = Row("PROBABILITY_OF_CONFORMITY", value_mm, standard_uncertainty_mm, lower_mm, upper_mm)
End Function

' Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.
'
' dof from 0.5; INFINITY gives that of the normal.
Public Function COVERAGE_FACTOR(ByVal probability As Variant, ByVal dof As Variant) As Variant
    COVERAGE_FACTOR = Row("COVERAGE_FACTOR", probability, dof)
End Function
' Here ends what is generated, too.
