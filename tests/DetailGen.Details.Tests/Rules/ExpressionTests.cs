using System.Globalization;
using CsCheck;
using DetailGen.Details.Reading;
using DetailGen.Details.Rules;
using DetailGen.Details.Rules.Language;
using DetailGen.Sections;
using DetailGen.Testing;

namespace DetailGen.Details.Tests.Rules;

public class ExpressionTests
{
    private static readonly Vocabulary Words = new(
    [
        .. Vocabulary.Circumstances, .. Vocabulary.Results,
        new("upstand.height", Kind.Length, []), new("coping.width", Kind.Length, []), new("wall.cavity", Kind.Length, []),
        new("roof.fall", Kind.Slope, []), new("layers", Kind.Number, []), new("wall.fill", Kind.Text, ["full", "partial"]),
    ],
    ["roof.deck", "tray"], ["plywood", "osb", "gravel"]);

    private static readonly Mark At = new("rules.yaml", 7, 12);

    [Theory]
    [InlineData("upstand.height >= 150 mm")]
    [InlineData("upstand.height >= 150 mm + coping.width / roof.fall")]
    [InlineData("roof.fall >= 1:80 and roof.fall <= 5°")]
    [InlineData("wall.fill = partial or not has(tray)")]
    [InlineData("not (wall.fill = partial or layers >= 2)")]
    [InlineData("wall.cavity between 40 mm and 60.5 mm and site.nation in [england, wales]")]
    [InlineData("material(roof.deck).id in [plywood, osb]")]
    [InlineData("material(roof.deck).conductivity <= 0.13 W/mK")]
    [InlineData("roof.u-value <= 0.16 W/m²K")]
    [InlineData("wall.r-value >= 2.5 m²K/W")]
    [InlineData("wall.cavity * material(roof.deck).density >= 80 kg/m²")]
    [InlineData("max(upstand.height, coping.width - wall.cavity) >= min(wall.cavity, 50 mm)")]
    [InlineData("upstand.height - (coping.width - wall.cavity) = 2 * wall.cavity")]
    public void What_is_printed_is_what_was_read(string text) => Assert.Equal(text, Read(text).ToString());

    [Fact]
    public void Printing_and_reading_are_each_others_inverse()
    {
        Gen<string> length = Gen.OneOf(
            OneOf("upstand.height", "coping.width", "wall.cavity", "max(upstand.height, 3 mm)"), Gen.Int[0, 999].Select(n => $"{n} mm"));
        Gen<string> sum = Gen.Recursive<string>((depth, inner) => depth > 3
            ? length
            : Gen.OneOf(length, Gen.Select(inner, OneOf("+", "-"), inner, (a, sign, b) => $"({a}) {sign} ({b})"), Gen.Select(Gen.Int[1, 9], inner, (n, a) => $"{n} * ({a})"), inner.Select(a => $"({a}) / roof.fall")));
        Gen<string> claim = Gen.Select(sum, OneOf("<", "<=", "=", "!=", ">=", ">"), sum, (a, sign, b) => $"{a} {sign} {b}");
        Gen<string> truth = Gen.Recursive<string>((depth, inner) => depth > 3
            ? claim
            : Gen.OneOf(claim, Gen.Select(inner, OneOf("and", "or"), inner, (a, word, b) => $"({a}) {word} ({b})"), inner.Select(a => $"not ({a})")));
        truth.Where(text => text.Length < 1500).Always(
            text =>
            {
                var printed = Printed(text);
                return printed is null || printed == Printed(printed); // null: nested deeper than is read
            });
    }

    [Theory]
    [InlineData("upstnd.height >= 150 mm", 0, "unknown-key")]
    [InlineData("upstand.height >= 150 ft", 22, "unknown-unit")]
    [InlineData("upstand.height >= 150", 18, "kinds-differ")]
    [InlineData("upstand.height >= 1:40", 18, "kinds-differ")]
    [InlineData("roof.u-value <= 0.16 m²K/W", 16, "kinds-differ")]
    [InlineData("wall.fill = partal", 12, "unknown-word")]
    [InlineData("wall.fill >= partial", 10, "not-comparable")]
    [InlineData("has(wall.cavty)", 4, "unknown-slot")]
    [InlineData("upstand.height >= ", 18, "expression-syntax")]
    [InlineData("upstand.height >= 150 mm and", 28, "expression-syntax")]
    [InlineData("upstand.height ? 150 mm", 15, "expression-syntax")]
    [InlineData("upstand.height * wall.cavity >= 150 mm", 15, "no-arithmetic")]
    [InlineData("layers * upstand.height >= 150 mm", 7, "not-linear")]
    [InlineData("upstand.height + layers >= 150 mm", 15, "no-arithmetic")]
    [InlineData("upstand.height >= 0.0001 mm", 18, "bad-figure")]
    [InlineData("roof.fall >= 2:80", 13, "bad-figure")]
    [InlineData("roof.fall >= 1:0", 13, "bad-figure")]
    [InlineData("sqrt(upstand.height) >= 1 mm", 0, "unknown-function")]
    [InlineData("material(roof.deck).colour = wall.fill", 0, "unknown-function")]
    [InlineData("upstand.height + 2 mm", 0, "wrong-kind")]
    public void A_fault_is_told_with_its_column(string text, int offset, string code)
    {
        var fault = Assert.Single(ExpressionReader.Condition(new Written(text, At), Words).Faults);
        Assert.Equal((code, new Mark("rules.yaml", 7, 12 + offset)), (fault.Code, fault.At));
        Assert.NotNull(fault.Hint);
    }

    [Theory]
    [InlineData("", 0, "unexpected end of input, expected `not` or a size, a key or a bracket")]
    [InlineData("upstand.height ? 150 mm", 15, "unexpected `?`")]
    [InlineData("upstand.height >= (150 mm", 25, "unexpected end of input, expected `)`")]
    [InlineData("upstand.height = layers = 2", 24, "unexpected comparison `=`")]
    [InlineData("upstand.height 150 mm", 15, "unexpected figure `150 mm`")]
    [InlineData("upstand.height >= 1 mm and and", 27, "unexpected name `and`, expected `not` or a size, a key or a bracket")]
    [InlineData("upstand.height + ) >= 1 mm", 17, "unexpected `)`, expected a size, a key or a bracket")]
    [InlineData("wall.fill in partial", 13, "unexpected name `partial`, expected `[`")]
    [InlineData("wall.fill not partial", 14, "unexpected name `partial`, expected `in`")]
    [InlineData("wall.fill in []", 14, "unexpected `]`, expected a size, a key or a bracket")]
    [InlineData("layers between 1 or 2", 17, "unexpected name `or`, expected `and`")]
    [InlineData("material(roof.deck). >= 1", 21, "unexpected comparison `>=`, expected name")]
    [InlineData("material(roof.deck).and", 20, "a name is expected here")]
    [InlineData("roof.fall >= 1: 80", 14, "unexpected `:`")]
    public void The_first_word_that_cannot_stand_there_is_told(string text, int offset, string reason) =>
        Assert.Equal([RuleMessages.Syntax(At with { Column = At.Column + offset }, reason)], ExpressionReader.Condition(new Written(text, At), Words).Faults);

    [Theory]
    [InlineData("upstand.height>=150mm", "upstand.height >= 150 mm")] // no blanks
    [InlineData("upstand.height >= 150 mm and\n layers = 2", "upstand.height >= 150 mm and layers = 2")]
    [InlineData("layers >= 2and layers <= 3", "layers >= 2 and layers <= 3")] // a keyword is no unit
    [InlineData("layers not in [1, 2]", "not layers in [1, 2]")]
    [InlineData("upstand.height-wall.cavity >= 1 mm", null)] // a hyphen within a name
    [InlineData("upstand.height - wall.cavity >= -1 mm", "upstand.height - wall.cavity >= -1 mm")]
    public void Words_end_where_they_should(string text, string? printed)
    {
        var read = ExpressionReader.Condition(new Written(text, At), Words);
        Assert.Equal(printed ?? "unknown-key", read.IsGood ? read.Value.ToString() : read.Faults[0].Code);
    }

    [Fact]
    public void A_slip_in_a_key_is_told_the_nearest() =>
        Assert.Equal(RuleMessages.UnknownKey(At, "upstnd.height", "upstand.height"), ExpressionReader.Condition(new Written("upstnd.height >= 150 mm", At), Words).Faults[0]);

    [Fact]
    public void All_unknown_names_of_an_expression_are_told_at_once() =>
        Assert.Equal(2, ExpressionReader.Condition(new Written("a >= 1 mm and b >= 2 mm", At), Words).Faults.Count);

    [Fact]
    public void Brackets_without_end_are_refused_before_they_are_parsed()
    {
        Assert.Equal("expression-too-deep", ExpressionReader.Condition(new Written(new string('(', 900), At), Words).Faults[0].Code);
        Assert.Equal("expression-too-deep", ExpressionReader.Condition(new Written(string.Concat(Enumerable.Repeat("not ", 400)), At), Words).Faults[0].Code);
        Assert.Equal("expression-too-deep", ExpressionReader.Condition(new Written(new string('-', 900), At), Words).Faults[0].Code);
        Assert.Equal("expression-too-long", ExpressionReader.Condition(new Written(new string('a', 3000), At), Words).Faults[0].Code);
    }

    [Theory]
    [InlineData("roof.fall >= 1:80", true)] // 1:40 is steeper than 1:80
    [InlineData("roof.fall >= 1:40", true)]
    [InlineData("roof.fall >= 1:39", false)]
    [InlineData("roof.fall <= 5°", true)] // 5° is about 1:11.4
    [InlineData("roof.fall >= 1.4°", true)] // 1:40.9
    [InlineData("roof.fall >= 1.5°", false)] // 1:38.2
    [InlineData("coping.width / roof.fall = 12.313 mm", true)] // 492.5 / 40 = 12.3125, up to the next micrometre
    [InlineData("upstand.height between 150 mm and 150 mm", true)]
    [InlineData("layers * 75 mm >= upstand.height", true)]
    [InlineData("wall.fill = partial", false)]
    [InlineData("wall.cavity >= 10 mm", false)] // there is none
    [InlineData("has(wall.cavity)", false)]
    [InlineData("material(roof.deck).kind = board and material(roof.deck).id != osb", true)]
    [InlineData("upstand.height * material(roof.deck).density >= 75 kg/m²", true)] // 0.15 m of 500 kg/m³
    [InlineData("max(upstand.height, coping.width) = 492.5 mm", true)]
    [InlineData("min(upstand.height, coping.width) < 150 mm", false)]
    public void Expressions_are_worked_out(string text, bool holds) => Assert.Equal(holds, Read(text).In(new Facts()).Holds);

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Reading_and_printing_are_the_same_in_every_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal("roof.u-value <= 0.16 W/m²K and site.nation in [ireland, wales]", Printed("roof.u-value <= 0.16 W/m²K and site.nation in [ireland, wales]"));
            Assert.Equal("102.5 mm", Printing.Amount(102_500, Kind.Length));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(place => words[place]);

    private static Expression Read(string text) => ExpressionReader.Condition(new Written(text, At), Words).Value;

    private static string? Printed(string text)
    {
        var read = ExpressionReader.Condition(new Written(text, At), Words);
        return read.IsGood ? read.Value.ToString() : read.Faults[0].Code == "expression-too-deep" ? null : throw new InvalidOperationException(read.Faults[0].Reason);
    }

    private sealed class Facts : IFacts
    {
        public Value Find(string key) => key switch
        {
            "upstand.height" => Value.Of(150_000, Kind.Length),
            "coping.width" => Value.Of(492_500, Kind.Length),
            "roof.fall" => Value.Of(40, Kind.Slope),
            "layers" => Value.Of(2, Kind.Number),
            "wall.fill" => Value.Of("full"),
            _ => Value.Missing,
        };

        public bool Has(string slot) => slot == "roof.deck";

        public Material? MaterialIn(string slot) => slot == "roof.deck" ? new Material("plywood", "Plywood", "board", "plywood", "PW", 0.13, 500, "tabulated") : null;
    }
}
