using System.Globalization;

namespace DetailGen.Details.Quantities;

/// <summary>What a parameter is measured in.</summary>
public enum Unit
{
    /// <summary>Micrometres inside, mm outside.</summary>
    Length,

    /// <summary>The n of 1:n, a whole number.</summary>
    Ratio,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>One word of a list.</summary>
    Choice,
}

/// <summary>A value that a parameter can take.</summary>
/// <param name="Number">Micrometres, n, or the count; 0 for a choice.</param>
/// <param name="Word">The word of a choice; null for every other unit.</param>
public readonly record struct Setting(Unit Unit, long Number, string? Word)
{
    public static Setting Of(Length length) => new(Unit.Length, length.Micrometres, null);

    public static Setting Ratio(long n) => new(Unit.Ratio, n, null);

    public static Setting Count(long count) => new(Unit.Count, count, null);

    public static Setting Choice(string word) => new(Unit.Choice, 0, word);

    /// <summary>A number of the given unit.</summary>
    public static Setting Numeric(Unit unit, long number) => new(unit, number, null);

    public Length AsLength() => Unit == Unit.Length ? new(Number) : throw new InvalidOperationException($"{this} is no length.");

    /// <summary>As written in a preset: "102.5 mm", "1:40", "2", "full".</summary>
    public override string ToString() => Unit switch
    {
        Unit.Length => new Length(Number).ToString(),
        Unit.Ratio => string.Create(CultureInfo.InvariantCulture, $"1:{Number}"),
        Unit.Count => Number.ToString(CultureInfo.InvariantCulture),
        _ => Word ?? "",
    };
}
