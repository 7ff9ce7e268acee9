using System.Globalization;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Entities;

/// <summary>How a dimension measures.</summary>
public enum Measuring
{
    /// <summary>In a given direction, such as horizontally.</summary>
    Rotated = 0,

    /// <summary>Straight from point to point.</summary>
    Aligned = 1,
}

/// <summary>A measured length. One shorter than <see cref="Entity.LeastLength"/> is left out.</summary>
/// <param name="First">First measured point.</param>
/// <param name="Second">Second measured point.</param>
/// <param name="Through">Any point on the dimension line; written is the one beside the second measured point.</param>
/// <param name="Style">A dimension style of the document, or Standard.</param>
/// <param name="Picture">What is seen; its text must be the measured length or agree with <see cref="Override"/>.</param>
public sealed record Dimension(DxfPoint First, DxfPoint Second, DxfPoint Through, string Style, DimensionPicture Picture) : Entity
{
    private const double RoundingError = 0.05; // one decimal is shown

    public Measuring Measuring { get; init; }

    /// <summary>The direction measured, in degrees, for a rotated one: 0 horizontal, 90 vertical.</summary>
    public double Angle { get; init; }

    /// <summary>Null for the measured length; else text in which <c>&lt;&gt;</c> stands for it, such as <c>&lt;&gt; min</c>.</summary>
    public string? Override { get; init; }

    /// <summary>The measured length, in drawing units.</summary>
    public double Measured => Measuring is Measuring.Aligned
        ? First.DistanceTo(Second)
        : Math.Abs((Second - First).Turned(-Angle).X);

    /// <summary>A length as a dimension shows it: whole, or with one decimal where it needs one, and a point.</summary>
    public static string Written(double length) =>
        Math.Round(length, 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>The block that holds the picture; settled by the writer.</summary>
    internal string PictureBlock { get; init; } = "";

    internal static readonly AttributeTable<Dimension> Table = new("DIMENSION")
    {
        "AcDbDimension",
        { 280, 0 },
        { 2, dimension => dimension.PictureBlock, Role.Derived },
        { 10, dimension => dimension.Through },
        { 11, dimension => dimension.Picture.Text.Middle },
        { 70, dimension => 32 + (int)dimension.Measuring }, // 32: the picture's block is its own
        { 71, 5 },
        { 42, dimension => dimension.Measured, Role.Derived },
        { 1, dimension => DxfString.ForText(dimension.Override ?? "") },
        { 3, dimension => dimension.Style },
        "AcDbAlignedDimension",
        { 13, dimension => dimension.First },
        { 14, dimension => dimension.Second },
        (dimension, sink) =>
        {
            // For aligned ones too, since a reader measures along it; there it follows from the points.
            if (!sink.ValuesOnly || dimension.Measuring is Measuring.Rotated)
            {
                sink.Number(50, dimension.Direction, Grid.Angle);
            }

            if (dimension.Measuring is Measuring.Rotated && !sink.ValuesOnly)
            {
                sink.Marker("AcDbRotatedDimension");
            }
        },
    };

    internal override string Kind => Table.Kind;

    private double Direction =>
        Measuring is Measuring.Rotated ? Angle : Math.Atan2(Second.Y - First.Y, Second.X - First.X) * 180 / Math.PI;

    // The point on the dimension line that belongs to the second measured point.
    private DxfPoint LineEnd
    {
        get
        {
            var along = DxfPoint.Direction(Direction);
            var from = Second - Through;
            return Through + (((from.X * along.X) + (from.Y * along.Y)) * along);
        }
    }

    /// <summary>The picture as entities of its block, lines before letters.</summary>
    internal IEnumerable<Entity> Drawn()
    {
        foreach (var piece in (IEnumerable<Segment>)[.. Picture.WitnessLines, Picture.DimensionLine, .. Picture.Strokes])
        {
            yield return new Line(piece.From, piece.To) { Layer = Layer };
        }

        foreach (var mark in Picture.Marks)
        {
            yield return mark;
        }

        var text = Picture.Text;
        yield return new Text(text.Content, text.Middle, text.Height, text.Width)
        {
            Layer = Layer,
            Across = Across.Centre,
            Upright = Upright.Middle,
            Rotation = text.Rotation,
        };
    }

    internal override Entity? Cleaned()
    {
        if (Measured < LeastLength)
        {
            return null;
        }

        var shown = Picture.Text.Content;
        var agrees = Override is null
            ? double.TryParse(shown, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && Math.Abs(number - Measured) <= RoundingError + 1e-9
            : shown == Override.Replace("<>", Written(Measured), StringComparison.Ordinal);
        return agrees ? this with { Through = LineEnd } : throw new ArgumentException($"A dimension shows '{shown}' but measures {Written(Measured)}.");
    }

    internal override void Walk(ITagSink sink) => Table.Walk(this, sink);

    internal override void Extend(Bounds bounds)
    {
        foreach (var piece in Drawn())
        {
            piece.Extend(bounds);
        }
    }
}
