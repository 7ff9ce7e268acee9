using CsCheck;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tables;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests.Entities;

public sealed class DimensionTests
{
    private static readonly DimensionStyle Style = new("DIM-1-10", 10);

    [Theory]
    [InlineData(1200, "1200")]
    [InlineData(102.5, "102.5")]
    [InlineData(102.04, "102")]
    [InlineData(0.25, "0.3")]
    public void A_length_is_shown_with_one_decimal_where_it_needs_one(double length, string text) => Assert.Equal(text, Dimension.Written(length));

    [Fact]
    public void The_picture_follows_the_style()
    {
        var picture = DimensionPicture.Of(new(0, 0), new(1200, 50), new(0, -120), 0, Style, "1200", 56);

        Assert.Equal(new(new(0, -120), new(1200, -120)), picture.DimensionLine);
        Assert.Equal([new(new(0, -15), new(0, -135)), new(new(1200, 35), new(1200, -135))], picture.WitnessLines.AsEnumerable());
        Assert.Equal(new DxfPoint(600, -120 + 8 + 12.5), picture.Text.Middle);
        Assert.All(picture.Strokes, stroke => Assert.Equal(25, stroke.From.DistanceTo(stroke.To), 9));
        Assert.All(picture.Strokes, stroke => Assert.Equal(1, (stroke.To - stroke.From).Y / (stroke.To - stroke.From).X, 9));
    }

    [Fact]
    public void A_text_never_stands_upside_down() =>
        Gen.Double[-720, 720].Always(direction =>
            DimensionPicture.Of(new(0, 0), new(100, 30), new(0, 50), direction, Style, "x", 5).Text.Rotation is > -90 and <= 90);

    [Fact]
    public void Upright_texts_are_read_from_the_right() =>
        Assert.Equal(90, DimensionPicture.Of(new(0, 0), new(0, 100), new(-50, 0), 270, Style, "100", 40).Text.Rotation);

    [Fact]
    public void A_rotated_dimension_measures_in_its_direction_only()
    {
        var points = (First: new DxfPoint(0, 0), Second: new DxfPoint(300, 400));
        var picture = DimensionPicture.Of(points.First, points.Second, new(0, 0), 0, Style, "300", 40);
        var dimension = new Dimension(points.First, points.Second, new(0, 0), Style.Name, picture) { Layer = "0" };

        Assert.Equal(300, dimension.Measured);
        Assert.Equal(400, (dimension with { Angle = 90 }).Measured);
        Assert.Equal(500, (dimension with { Measuring = Measuring.Aligned }).Measured);
    }
}
