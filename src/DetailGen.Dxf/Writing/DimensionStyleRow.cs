using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>A dimension style, complete: a program that redraws a dimension takes whatever is missing from its own defaults.</summary>
internal static class DimensionStyleRow
{
    public static void Write(TagWriter writer, DimensionStyle style, int textStyle)
    {
        writer.Integer(70, 0);
        foreach (var (code, value) in (ReadOnlySpan<(int, double)>)
        [
            (40, style.Scale), (41, 2), (42, style.OffsetOnPaper), (43, 7), (44, style.ExtensionOnPaper), (45, 0), (46, 0), (47, 0), (48, 0),
            (140, style.TextOnPaper), (141, 0), (142, style.StrokeOnPaper), (143, 25.4), (144, 1), (145, 0), (146, 1), (147, style.GapOnPaper), (148, 0),
        ])
        {
            writer.Number(code, value);
        }

        // 77 above the line, 73 and 74 along it, 271 one decimal, 78 without trailing noughts, 277 decimal, 278 a point, 172 line between.
        foreach (var (code, value) in (ReadOnlySpan<(int, int)>)
        [
            (71, 0), (72, 0), (73, 0), (74, 0), (75, 0), (76, 0), (77, 1), (78, 8), (79, 0), (170, 0), (171, 2), (172, 1),
            (173, 0), (174, 0), (175, 0), (176, 0), (177, 0), (178, 0), (179, 0), (271, 1), (272, 0), (273, 2), (274, 2),
            (275, 0), (276, 0), (277, 2), (278, 46), (279, 2), (280, 0), (281, 0), (282, 0), (283, 1), (284, 8), (285, 0),
            (286, 0), (288, 1), (289, 3),
        ])
        {
            writer.Integer(code, value);
        }

        writer.Handle(340, textStyle);
        writer.Integer(371, -1);
        writer.Integer(372, -1);
    }
}
