using DetailGen.Drawing.Annotation;
using DetailGen.Drawing.Annotation.Dimensions;
using DetailGen.Drawing.Scenes;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets;

/// <summary>Whether the dimensions at the wall's foot keep off the title of the view.</summary>
internal static class FootRoom
{
    private const double Off = 1.5;

    /// <summary>How much the dimensions below the wall come too near to the title that stands under them; mm, 0 where they do not or stand beside it.</summary>
    internal static double Lack(AnnotationRequest request, PaperBox title, bool mirrored)
    {
        Measure[] chain = [.. request.Section.Measures.Where(measure => measure.Chain == Chains.WallFoot)];
        if (chain.Length == 0)
        {
            return 0;
        }

        var surface = new Surface(request.View);
        double[] ends = [.. chain.SelectMany(measure => (double[])[measure.From.X, measure.To.X]).Select(x => (mirrored ? -x : x) / surface.Scale)];
        if (ends.Max() + Off < title.Left || ends.Min() - Off > title.Right)
        {
            return 0;
        }

        var depth = new SideDimensions(surface, Side.Below).Depth([.. Rounding.Of(chain).Select(figure => (Chains.WallFoot, figure))]);
        return Math.Max(0, title.Top + Off - (surface.DrawnWithBreaks.Bottom - SideDimensions.First - depth));
    }
}
