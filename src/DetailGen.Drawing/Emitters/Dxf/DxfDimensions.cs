using System.Collections.Immutable;
using DetailGen.Drawing.Lettering;
using DetailGen.Drawing.Scenes;
using DetailGen.Dxf;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tables;

namespace DetailGen.Drawing.Emitters.Dxf;

/// <summary>Dimensions with their pictures, and the styles they name: one for each scale and height of figures.</summary>
internal sealed class DxfDimensions(Typeface typeface)
{
    private readonly SortedDictionary<string, DimensionStyle> _styles = new(StringComparer.Ordinal);

    public ImmutableArray<DimensionStyle> Styles => [.. _styles.Values];

    /// <param name="mark">Makes the entity of a stroke, dot or tick on the layer of its own row.</param>
    public Entity Of(string layer, Scenes.Dimension dimension, DxfPlace place, Func<Item, Entity> mark)
    {
        var picture = Dimensions.Picture(dimension, typeface);
        var turn = dimension.Vertical ? 90 : 0;
        var height = dimension.Height * place.Scale;
        var figure = DxfLetters.Plain(dimension.Figure);
        var middle = place.At(dimension.FigureAt) + new DxfPoint(0, height / 2).Turned(turn);
        var width = typeface.Width(figure, dimension.Height) * place.Scale;
        var line = dimension.Vertical ? place.At(dimension.Line, dimension.From.Y) : place.At(dimension.From.X, dimension.Line);
        var marks = picture.Tick is null ? picture.Ends : [picture.Tick, .. picture.Ends];

        var drawn = new DetailGen.Dxf.Entities.Dimension(
            place.At(dimension.From), place.At(dimension.To), line, Style(place.Scale, dimension.Height),
            new([.. picture.Witnesses.Select(Piece)], Piece(picture.Line), [], new(figure, middle, height, width, turn)) { Marks = [.. marks.Select(mark)] })
        {
            Layer = layer,
            Angle = turn,
        };
        return drawn with { Override = Override(figure, DetailGen.Dxf.Entities.Dimension.Written(drawn.Measured)) };

        Segment Piece(Stroke stroke) => new(place.At(stroke.Points[0]), place.At(stroke.Points[1]));
    }

    // A figure that is the measured length stays live, also with words behind it; one that was rounded to close a chain stands as written.
    private static string? Override(string figure, string measured) =>
        figure == measured ? null
        : figure.StartsWith(measured + " ", StringComparison.Ordinal) ? "<>" + figure[measured.Length..]
        : figure;

    private string Style(double scale, double height)
    {
        var name = FormattableString.Invariant($"DIM-1-{scale}") + (height == TextSizes.Usual.Notes ? "" : FormattableString.Invariant($"-{height * 10:0}"));
        if (!_styles.ContainsKey(name))
        {
            _styles[name] = new(name, scale)
            {
                TextOnPaper = height,
                OffsetOnPaper = Dimensions.Offset,
                ExtensionOnPaper = Dimensions.Past,
                StrokeOnPaper = Dimensions.StrokeLength / 2,
                GapOnPaper = Dimensions.Gap,
            };
        }

        return name;
    }
}
