using DetailGen.Details.Climates;
using DetailGen.Details.Parameters;
using DetailGen.Details.Reading.Shapes;
using DetailGen.Details.Rules;
using DetailGen.Details.Sheets;

namespace DetailGen.Details.Presets;

/// <summary>JSON schemas for editors, written from the tables that the readers walk.</summary>
public static class Schemas
{
    public static string Preset(Components components) => JsonSchema.Of("Preset of a junction detail", PresetShape.For(components));

    public static string Base(Components components) => JsonSchema.Of("Base that presets extend", PresetShape.BaseFor(components));

    public static string Component { get; } = JsonSchema.Of("Wall, roof or junction", ComponentShape.Shape);

    public static string Materials { get; } = JsonSchema.Of("Materials", MaterialShape.Shape);

    public static string Climates { get; } = JsonSchema.Of("Climates", ClimateShape.Shape);

    public static string Stock { get; } = JsonSchema.Of("Stock sizes", StockShape.Shape);

    public static string Rules { get; } = JsonSchema.Of("Rule pack", RuleShape.Shape);

    public static string Layers { get; } = JsonSchema.Of("Layers of the drawing", SheetShape.Layers);

    public static string Inks { get; } = JsonSchema.Of("Inks", SheetShape.InkList);

    public static string Formats { get; } = JsonSchema.Of("Sheet formats", SheetShape.Formats);

    public static string TextSizes { get; } = JsonSchema.Of("Heights of letters", SheetShape.TextSizes);

    public static string Logo { get; } = JsonSchema.Of("Logo for the title block", SheetShape.Logo);

    public static string Typeface { get; } = JsonSchema.Of("Typeface of the sheets", SheetShape.Typeface);

    /// <summary>Schema of any other list or map file, such as a rule pack, from the shape that its reader walks.</summary>
    public static string Of(string title, Shape shape) => JsonSchema.Of(title, shape);
}
