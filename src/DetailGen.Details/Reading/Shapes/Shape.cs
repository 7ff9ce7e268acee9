using System.Text.RegularExpressions;
using DetailGen.Details.Quantities;

namespace DetailGen.Details.Reading.Shapes;

/// <summary>What may stand at a place of a YAML file. Readers check texts against it, and the schemas for editors are written from it: there is no second list of keys.</summary>
public abstract record Shape;

/// <summary>A text.</summary>
/// <param name="MaxLength">Signs, at most.</param>
/// <param name="Pattern">The whole text matches it; null for any.</param>
/// <param name="Asked">The pattern in words, such as "letters, digits, hyphen, dot and underscore"; null without pattern.</param>
/// <param name="Blank">It may be left empty.</param>
public sealed record TextShape(int MaxLength = 1000, Regex? Pattern = null, string? Asked = null, bool Blank = false) : Shape;

/// <summary>One word of a list.</summary>
public sealed record WordShape(params IReadOnlyList<string> Words) : Shape;

/// <summary>A bare number.</summary>
public sealed record NumberShape(decimal Least, decimal Most, bool Whole = false) : Shape;

/// <summary>true or false.</summary>
public sealed record FlagShape : Shape;

/// <summary>Year, month, day: 2026-11-25.</summary>
public sealed record DateShape : Shape;

/// <summary>A number with the unit of the kind; where <paramref name="BareToo"/>, a bare number too.</summary>
/// <param name="Shown">Unit that a message proposes; null for the usual one of the kind.</param>
public sealed record QuantityShape(QuantityKind Kind, bool BareToo = false, string? Shown = null) : Shape
{
    /// <summary>In the unit of the kind.</summary>
    public decimal? Least { get; init; }

    /// <summary>In the unit of the kind.</summary>
    public decimal? Most { get; init; }
}

/// <summary>The value of a parameter of that unit; the domain is the parameter's affair.</summary>
public sealed record SettingShape(Unit Unit, IReadOnlyList<string> Options, string? Meaning = null, string? Domain = null) : Shape;

/// <summary>The value of some parameter, whose unit is not known here.</summary>
public sealed record AnySettingShape : Shape;

/// <summary>An expression, kept as it is written.</summary>
public sealed record ExpressionShape : Shape;

/// <summary>A list whose items are all of one shape.</summary>
public sealed record ListShape(Shape Item, int Least = 0) : Shape;

/// <summary>A map with the keys named here and no other.</summary>
public sealed record MapShape(params IReadOnlyList<Field> Fields) : Shape
{
    /// <summary>Where this key stands, the required ones may come from elsewhere; null for no such key. For editors only, readers ask of what was merged.</summary>
    public string? Instead { get; init; }
}

/// <summary>A map whose keys are not named here.</summary>
/// <param name="Keys">What the keys are, such as "rule id".</param>
/// <param name="Known">The keys that there are, where they are known after all; for editors only, the reader tells unknown ones itself.</param>
public sealed record TableShape(Shape Value, string Keys, IReadOnlyList<Field>? Known = null) : Shape;

/// <summary>One of several, told apart by being a word, a list or a map.</summary>
public sealed record EitherShape(params IReadOnlyList<Shape> Shapes) : Shape;

/// <summary>A key of a map, and what may stand there.</summary>
/// <param name="Meaning">For editors; a sentence.</param>
public sealed record Field(string Key, Shape Shape, string Meaning, bool Required = false);
