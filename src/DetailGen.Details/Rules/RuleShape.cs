using DetailGen.Details.Parameters;
using DetailGen.Details.Reading.Shapes;

namespace DetailGen.Details.Rules;

/// <summary>The keys of a rule pack: a list of rules.</summary>
public static class RuleShape
{
    public static MapShape Rule { get; } = new(
        new Field("id", new TextShape(80), "Name by which presets waive it and reports tell it.", Required: true),
        new Field("name", new TextShape(60), "What it is about in a few words; check lists tell it by them."),
        new Field("aliases", new ListShape(new TextShape(80)), "Ids of rules that say the same."),
        new Field("class", new WordShape("enforced", "to-confirm", "dormant"), "enforced where it is left out."),
        new Field("when", new ExpressionShape(), "The rule applies only then."),
        new Field("require", new ExpressionShape(), "What must hold; of an enforced rule."),
        new Field("confirm", new TextShape(), "What a person must check; of a rule to confirm."),
        new Field("simulate", new TextShape(), "Of a rule to confirm: what a simulation of the section can say in a person's stead, such as junction.frsi >= 0.75."),
        new Field("awaits", new TextShape(), "What it waits for; of a dormant rule."),
        new Field("text", new TextShape(), "The rule in one sentence.", Required: true),
        new Field("severity", new WordShape("must", "should", "advise"), "How much it weighs.", Required: true),
        new Field("enforcement", new WordShape("error", "warning", "info"), "What a breach is."),
        new Field("reason", new TextShape(), "Why, in plain words.", Required: true),
        new Field("source", SourceShape.Shape, "Where it comes from.", Required: true),
        new Field("hint", new TextShape(), "What to do about a breach."),
        new Field("ask", new TextShape(), "Whom to ask, where lives hang on it."),
        new Field("corrected", new TextShape(), "How the entry departs from the catalogue it comes from."),
        new Field("relaxes", new TextShape(), "Why it asks less than the rule of the same id in the pack that this one extends."),
        new Field("whole", new FlagShape(), "Whether it is missed as much by little as by a lot: no size gives way to miss it by less."),
        new Field("yields", new FlagShape(), "Whether what is usual comes first: no size leaves its usual value for it, and a breach is told."),
        new Field("unbreakable", new TextShape(), "Why no preset can break it."),
        new Field("broken-with", Companions, "Rules that a breach breaks too."));

    private static MapShape Companions => new(
        new Field("rules", new ListShape(new TextShape(80), 1), "Their ids.", Required: true),
        new Field("why", new TextShape(), "Why it cannot be broken alone.", Required: true));

    /// <summary>The keys of <c>pack.yaml</c>, which every pack has.</summary>
    public static MapShape Head { get; } = new(
        new Field("title", new TextShape(80), "Whose rules they are.", Required: true),
        new Field("version", new TextShape(20), "As its authors count; sheets tell it.", Required: true),
        new Field("date", new DateShape(), "Day of this version.", Required: true),
        new Field("extends", new TextShape(60), "Another pack whose rules hold too; a rule of the same id here takes its place."),
        new Field("foremost", new ListShape(new TextShape(80)), "Rules of which a first sheet tells before others that pass, in this order."),
        new Field("steers", new ListShape(new MapShape(
            new Field("id", new TextShape(80), "Name of the entry.", Required: true),
            new Field("role", new WordShape("condition", "scope", "definition"), "What it is in place of a rule.", Required: true),
            new Field("text", new TextShape(), "What it says.", Required: true),
            new Field("rules", new ListShape(new TextShape(80), 1), "Rules that it steers.", Required: true),
            new Field("how", new TextShape(), "What becomes of it here.", Required: true),
            new Field("source", SourceShape.Shape, "Where it comes from.", Required: true))), "Entries that say when or for what rules apply."),
        new Field("disagreements", new ListShape(new MapShape(
            new Field("id", new TextShape(80), "Name.", Required: true),
            new Field("topic", new TextShape(), "What it is about.", Required: true),
            new Field("text", new TextShape(), "Who says what.", Required: true),
            new Field("rules", new ListShape(new TextShape(80)), "Rules that it bears on.", Required: true))), "Where sources do not agree."));

    public static ListShape Shape { get; } = new(Rule);

    /// <summary>Keys of a map, in the order of the table.</summary>
    internal static string[] Keys(MapShape shape) => [.. shape.Fields.Select(field => field.Key)];

    /// <summary>Words that a key of a map can have.</summary>
    internal static string[] Words(MapShape shape, string key) => [.. ((WordShape)shape.Fields.First(field => field.Key == key).Shape).Words];
}
