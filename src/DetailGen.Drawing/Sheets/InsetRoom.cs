using DetailGen.Drawing.Annotation;

namespace DetailGen.Drawing.Sheets;

/// <summary>Whether a view leaves white beside it for insets with names.</summary>
internal static class InsetRoom
{
    /// <summary>White is looked for in cells, of which one may be lost on either side.</summary>
    private const double Lost = 2 * WhitePaper.Cell;

    /// <summary>How much a view is foreseen to be too wide for that; mm, 0 where it is not, or no insets are asked for.</summary>
    internal static double Lack(AnnotationRequest request, Prepared before, SheetFormat format, SheetRequest asked) => asked is { Insets: true, ViewOnly: false } && Insets.Least(format) is var least and < double.PositiveInfinity
        ? Math.Max(0, Annotator.WidthForeseen(request, before) + least + Lost - request.View.Zone.Width)
        : 0;
}
