using System.Globalization;
using CsCheck;
using DetailGen.Details.Quantities;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Quantities;

public class QuantityReaderTests
{
    [Theory]
    [InlineData("150 mm", QuantityKind.Length, 150)]
    [InlineData("150mm", QuantityKind.Length, 150)]
    [InlineData("0.15 m", QuantityKind.Length, 150)]
    [InlineData("15 cm", QuantityKind.Length, 150)]
    [InlineData("125 µm", QuantityKind.Length, 0.125)]
    [InlineData("1:40", QuantityKind.Ratio, 40)]
    [InlineData("1 : 40", QuantityKind.Ratio, 40)]
    [InlineData("5°", QuantityKind.Angle, 5)]
    [InlineData("5 deg", QuantityKind.Angle, 5)]
    [InlineData("0.15 W/m²K", QuantityKind.Transmittance, 0.15)]
    [InlineData("0.15 W/m2K", QuantityKind.Transmittance, 0.15)]
    [InlineData("0.15 W/(m²·K)", QuantityKind.Transmittance, 0.15)]
    [InlineData("0.15 W/(m2.K)", QuantityKind.Transmittance, 0.15)]
    [InlineData("2.5 m²K/W", QuantityKind.Resistance, 2.5)]
    [InlineData("0.022 W/(m·K)", QuantityKind.Conductivity, 0.022)]
    [InlineData("2", QuantityKind.Bare, 2)]
    [InlineData("-3 mm", QuantityKind.Length, -3)]
    public void A_number_is_read_with_its_unit(string text, QuantityKind kind, double number) =>
        Assert.Equal(new Quantity(kind, (decimal)number), QuantityReader.Read(text, out _));

    [Theory]
    [InlineData("1,000 mm", "Write 1000 mm if it parts thousands, 1.000 mm if it parts decimals.")]
    [InlineData("1,50 mm", "Write 1.50 mm with a decimal point.")]
    [InlineData("1.000,5 mm", "Write 1000.5 mm.")]
    [InlineData("1,000.5 mm", "Write 1000.5 mm.")]
    [InlineData("1,000,000 mm", "Write 1000000 mm.")]
    public void A_comma_is_told_what_it_may_have_meant(string text, string hint) =>
        Assert.Equal(hint, Messages.BadQuantity(new("a.yaml", 1, 1), "wall.cavity", text, Unit.Length, QuantityFault.Comma).Hint);

    [Theory]
    [InlineData("", QuantityFault.NoNumber)]
    [InlineData("mm", QuantityFault.NoNumber)]
    [InlineData("1.2.3 mm", QuantityFault.NoNumber)]
    [InlineData("0,15 m", QuantityFault.Comma)]
    [InlineData("150 inches", QuantityFault.Unit)]
    [InlineData("1e3 mm", QuantityFault.Exponent)]
    [InlineData("1e400 mm", QuantityFault.Exponent)]
    [InlineData("1E-30", QuantityFault.Exponent)]
    [InlineData("1 e", QuantityFault.Unit)]
    [InlineData("1_000 mm", QuantityFault.Groups)]
    [InlineData("1 000 mm", QuantityFault.Groups)]
    [InlineData("1:99999999999999999999", QuantityFault.Digits)]
    [InlineData("150 MM", QuantityFault.Unit)]
    [InlineData("1:0", QuantityFault.Ratio)]
    [InlineData("2:40", QuantityFault.Ratio)]
    [InlineData("1:40.5", QuantityFault.Ratio)]
    [InlineData("1:", QuantityFault.Ratio)]
    [InlineData("99999999999999999999 mm", QuantityFault.Digits)]
    public void What_is_no_quantity_says_why(string text, QuantityFault expected)
    {
        Assert.Null(QuantityReader.Read(text, out var fault));
        Assert.Equal(expected, fault);
    }

    // n = 1/tan: 1.5° gives 38.19, 5° gives 11.43, 45° gives 1; the steeper whole n is the smaller one
    [Theory]
    [InlineData("1.5°", 38)]
    [InlineData("5°", 11)]
    [InlineData("45°", 1)]
    public void An_angle_becomes_the_next_steeper_ratio(string text, long n) => Assert.Equal(n, QuantityReader.Read(text, out _)!.Value.AsRatio());

    [Fact]
    public void The_ratio_of_an_angle_is_never_flatter_than_the_angle() =>
        Gen.Int[1, 4500].Select(hundredths => hundredths / 100m)
            .Always(angle => 1.0 / new Quantity(QuantityKind.Angle, angle).AsRatio()!.Value >= Math.Tan((double)angle * Math.PI / 180) - 1e-9);

    [Fact]
    public void A_written_length_reads_back_in_every_culture() =>
        Gen.Select(Gen.Long[-1_000_000_000, 1_000_000_000], Gen.OneOf("tr-TR", "de-DE", "ar-SA", "")).Always((micrometres, culture) =>
        {
            var before = CultureInfo.CurrentCulture;
            try
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
                return QuantityReader.Read(new Length(micrometres).ToString(), out _)?.AsLength() == new Length(micrometres);
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        });

    [Fact]
    public void Random_texts_never_throw() =>
        Gen.String[0, 30].Always(text => { QuantityReader.Read(text, out _)?.AsRatio(); QuantityReader.Read("9" + text, out _)?.AsLength(); });

    [Fact]
    public void A_length_without_unit_is_shown_with_one()
    {
        var fault = Assert.Single(SettingReader.Read("150", new("a", 1, 1), "wall.cavity", Unit.Length, []).Faults);
        Assert.Equal(("missing-unit", "Write 150 mm."), (fault.Code, fault.Hint));
    }

    [Fact]
    public void A_decimal_comma_is_shown_as_a_point()
    {
        var fault = Assert.Single(SettingReader.Read("0,15 m", new("a", 1, 1), "wall.cavity", Unit.Length, []).Faults);
        Assert.Equal(("decimal-comma", "Write 0.15 m with a decimal point."), (fault.Code, fault.Hint));
    }

    [Theory]
    [InlineData("1:40", Unit.Length, "wrong-unit")]
    [InlineData("150 mm", Unit.Ratio, "wrong-unit")]
    [InlineData("40", Unit.Ratio, "missing-unit")]
    [InlineData("2 mm", Unit.Count, "wrong-unit")]
    [InlineData("1.5", Unit.Count, "wrong-unit")]
    [InlineData("60°", Unit.Ratio, "wrong-unit")]
    [InlineData("0.0001 mm", Unit.Length, "too-fine")]
    [InlineData("999999999999 m", Unit.Length, "too-long")]
    [InlineData("1:2000000", Unit.Ratio, "out-of-domain")]
    [InlineData("2000000", Unit.Count, "out-of-domain")]
    public void A_value_of_another_unit_is_refused(string text, Unit unit, string code) =>
        Assert.Equal(code, Assert.Single(SettingReader.Read(text, new("a", 1, 1), "key", unit, []).Faults).Code);
}
