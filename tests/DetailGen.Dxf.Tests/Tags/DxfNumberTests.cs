using System.Globalization;
using System.Text;
using CsCheck;
using DetailGen.Dxf.Tags;
using DetailGen.Testing;

namespace DetailGen.Dxf.Tests.Tags;

public sealed class DxfNumberTests
{
    private static readonly Gen<double> Coordinate = Gen.Double[-1e6, 1e6];
    private static readonly Gen<Grid> AnyGrid = Gen.OneOf(Grid.Length, Grid.Angle, Grid.Ratio);

    [Fact]
    public void A_number_reads_back_as_the_double_on_the_grid() =>
        Coordinate.Always(value => Read(Written(value, Grid.Length)) == DxfNumber.OnGrid(value, Grid.Length));

    [Fact]
    public void The_text_is_the_shortest_that_reads_back() =>
        Gen.Select(Gen.Double[-900, 900], AnyGrid).Always((value, grid) =>
        {
            var onGrid = DxfNumber.OnGrid(value, grid);
            var digits = Written(value, grid).Count(char.IsDigit);
            var shortest = ((decimal)Math.Abs(onGrid)).ToString("0.0###############", CultureInfo.InvariantCulture).Count(char.IsDigit);
            return digits <= shortest;
        });

    [Fact]
    public void There_is_a_point_and_neither_an_exponent_nor_a_negative_nought() =>
        Gen.Select(Gen.OneOf(Coordinate, Gen.Double[-1e-7, 1e-7], Gen.Int[-1000, 1000].Select(whole => (double)whole)), Gen.OneOf(Grid.Length, Grid.Angle))
            .Always((value, grid) =>
            {
                var text = Written(value, grid);
                return text.Contains('.') && text.All(letter => char.IsAsciiDigit(letter) || letter is '.' or '-')
                    && char.IsAsciiDigit(text[^1]) && char.IsAsciiDigit(text[text.IndexOf('.') - 1]) && (Read(text) != 0 || text == "0.0");
            });

    [Fact]
    public void What_lies_on_the_grid_stays_where_it_is() =>
        Gen.Select(Coordinate, AnyGrid).Where((value, grid) => grid != Grid.Ratio || Math.Abs(value) < 900).Always((value, grid) =>
            DxfNumber.OnGrid(DxfNumber.OnGrid(value, grid), grid) == DxfNumber.OnGrid(value, grid));

    [Fact]
    public void Under_a_decimal_comma_the_point_stays()
    {
        Assert.Equal(",", CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator);
        Assert.Equal("1234.5", Written(1234.5, Grid.Length));
    }

    [Theory]
    [InlineData(0, "0.0")]
    [InlineData(-4e-7, "0.0")]
    [InlineData(1e-6, "0.000001")]
    [InlineData(50, "50.0")]
    [InlineData(-102.5, "-102.5")]
    [InlineData(999999.9999999, "1000000.0")]
    public void A_number_is_written_as_expected(double value, string text) => Assert.Equal(text, Written(value, Grid.Length));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e300)]
    [InlineData(1e9)]
    public void What_no_drawing_can_hold_is_refused(double value) => Assert.Throws<ArgumentException>(() => Written(value, Grid.Length));

    private static string Written(double value, Grid grid)
    {
        Span<byte> text = stackalloc byte[DxfNumber.MostBytes];
        return Encoding.ASCII.GetString(text[..DxfNumber.Format(value, grid, text)]);
    }

    private static double Read(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
