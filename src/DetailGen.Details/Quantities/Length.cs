namespace DetailGen.Details.Quantities;

/// <summary>A length in exact micrometres: foils, sheet metal and halves of odd sums all fit.</summary>
public readonly record struct Length(long Micrometres) : IComparable<Length>
{
    public static Length Zero => new(0);

    /// <summary>From a written number of millimetres; null where it is finer than a micrometre or longer than a thousand kilometres.</summary>
    public static Length? Exactly(decimal millimetres) =>
        millimetres * 1000 is var exact && decimal.IsInteger(exact) && Math.Abs(exact) <= 1_000_000_000_000 ? new((long)exact) : null;

    public static Length operator +(Length a, Length b) => new(checked(a.Micrometres + b.Micrometres));

    public static Length operator -(Length a, Length b) => new(checked(a.Micrometres - b.Micrometres));

    public static bool operator <(Length a, Length b) => a.Micrometres < b.Micrometres;

    public static bool operator >(Length a, Length b) => a.Micrometres > b.Micrometres;

    public static bool operator <=(Length a, Length b) => a.Micrometres <= b.Micrometres;

    public static bool operator >=(Length a, Length b) => a.Micrometres >= b.Micrometres;

    public int CompareTo(Length other) => Micrometres.CompareTo(other.Micrometres);

    /// <summary>The one door to floating point, used where the section is built; mm.</summary>
    public double ToMillimetres() => Micrometres / 1000.0;

    /// <summary>As written in a preset: "102.5 mm".</summary>
    public override string ToString() => (Micrometres / 1000m).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture) + " mm";
}
