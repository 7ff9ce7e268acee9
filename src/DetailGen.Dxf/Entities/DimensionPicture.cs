using System.Collections.Immutable;
using DetailGen.Dxf.Tables;

namespace DetailGen.Dxf.Entities;

/// <summary>What is seen of a dimension: readers draw this and nothing else.</summary>
/// <param name="WitnessLines">From near the measured points to just past the dimension line.</param>
/// <param name="DimensionLine">From stroke to stroke.</param>
/// <param name="Strokes">Short oblique lines across both ends.</param>
/// <param name="Text">Centred; its own layer and colour are not used.</param>
public sealed record DimensionPicture(
    ImmutableArray<Segment> WitnessLines, Segment DimensionLine, ImmutableArray<Segment> Strokes, DimensionText Text)
{
    /// <summary>Further marks on layers of their own, such as dots instead of strokes; no dimensions and no inserts.</summary>
    public ImmutableArray<Entity> Marks { get; init; } = [];

    /// <summary>The picture that a style draws: the text above the middle of the line, readable from below or from the right.</summary>
    /// <param name="first">First measured point.</param>
    /// <param name="second">Second measured point.</param>
    /// <param name="through">Any point on the dimension line.</param>
    /// <param name="direction">The direction measured, in degrees; 0 horizontal, 90 vertical.</param>
    /// <param name="textWidth">Measured width of the text, in drawing units.</param>
    public static DimensionPicture Of(
        DxfPoint first, DxfPoint second, DxfPoint through, double direction, DimensionStyle style, string text, double textWidth)
    {
        var along = DxfPoint.Direction(direction);
        var (a, b) = (OnLine(first), OnLine(second));
        var scale = style.Scale;
        var stroke = scale * style.StrokeOnPaper * DxfPoint.Direction(direction + 45);
        var readable = Readable(direction);
        var up = DxfPoint.Direction(readable + 90);
        var height = scale * style.TextOnPaper;
        return new(
            [Witness(first, a), Witness(second, b)],
            new(a, b),
            [new(a - stroke, a + stroke), new(b - stroke, b + stroke)],
            new(text, (0.5 * (a + b)) + (((scale * style.GapOnPaper) + (height / 2)) * up), height, textWidth, readable));

        DxfPoint OnLine(DxfPoint point)
        {
            var from = point - through;
            return through + (((from.X * along.X) + (from.Y * along.Y)) * along);
        }

        Segment Witness(DxfPoint point, DxfPoint end)
        {
            var length = point.DistanceTo(end);
            var towards = length < Entity.LeastLength ? default : 1 / length * (end - point);
            var start = length <= scale * style.OffsetOnPaper ? end : point + (scale * style.OffsetOnPaper * towards);
            return new(start, end + (scale * style.ExtensionOnPaper * towards));
        }
    }

    // Letters stand upright or look to the left, never upside down.
    private static double Readable(double direction)
    {
        var turn = ((direction % 360) + 360) % 360;
        return turn is > 90 and <= 270 ? turn - 180 : turn is > 270 ? turn - 360 : turn;
    }
}

/// <summary>A straight piece from one point to another.</summary>
public readonly record struct Segment(DxfPoint From, DxfPoint To);

/// <summary>The text of a dimension.</summary>
/// <param name="Middle">The middle of the letters, along and across.</param>
/// <param name="Height">Height of capitals, in drawing units.</param>
/// <param name="Width">Measured width, in drawing units.</param>
/// <param name="Rotation">Degrees, counter-clockwise.</param>
public sealed record DimensionText(string Content, DxfPoint Middle, double Height, double Width, double Rotation);
