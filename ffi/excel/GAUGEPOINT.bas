Attribute VB_Name = "GAUGEPOINT"
' The functions of gaugepoint in Excel: =GAUGEPOINT.BENCH_CLEARANCE_MM(B1,B2), under the names that they have in LibreOffice Calc.
'
' NEVER RUN IN EXCEL. Every Declare below was called as it stands here, from another language and on Linux; the lines between them and the cells were
' only read. Before you trust it: =GAUGEPOINT.SELFTEST() must show ok, and a sheet whose results you know must show them.
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

' What stands in a cell, without the formats of dates and money.
Private Function Content(ByVal cell As Variant) As Variant
    If Not IsObject(cell) Then
        Content = cell
    ElseIf cell.CountLarge = 1 Then
        Content = cell.Value2
    Else
        Content = CVErr(xlErrValue)
    End If
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
' Here ends what is generated, too.
