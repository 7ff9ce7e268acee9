using DetailGen.Details.Parameters;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Rules;

/// <summary>The keys of a rule pack: a list of rules.</summary>
public static class RuleShape
{
    public static MapShape Rule { get; } = new(
        new Field("id", new TextShape(80), "Name by which presets waive it and reports tell it.", Required: true),
        new Field("aliases", new ListShape(new TextShape(80)), "Ids of rules that say the same."),
        new Field("class", new WordShape("enforced", "to-confirm", "dormant"), "enforced where it is left out."),
        new Field("when", new ExpressionShape(), "The rule applies only then."),
        new Field("require", new ExpressionShape(), "What must hold; of an enforced rule."),
        new Field("confirm", new TextShape(), "What a person must check; of a rule to confirm."),
        new Field("awaits", new TextShape(), "What it waits for; of a dormant rule."),
        new Field("text", new TextShape(), "The rule in one sentence.", Required: true),
        new Field("severity", new WordShape("must", "should", "advise"), "How much it weighs.", Required: true),
        new Field("enforcement", new WordShape("error", "warning", "info"), "What a breach is."),
        new Field("reason", new TextShape(), "Why, in plain words.", Required: true),
        new Field("source", SourceShape.Shape, "Where it comes from.", Required: true),
        new Field("hint", new TextShape(), "What to do about a breach."),
        new Field("safety", new TextShape(), "Whom to ask, where lives hang on it."));

    public static ListShape Shape { get; } = new(Rule);

    /// <summary>Keys of a map, in the order of the table.</summary>
    internal static string[] Keys(MapShape shape) => [.. shape.Fields.Select(field => field.Key)];

    /// <summary>Words that a key of a map can have.</summary>
    internal static string[] Words(MapShape shape, string key) => [.. ((WordShape)shape.Fields.First(field => field.Key == key).Shape).Words];
}
