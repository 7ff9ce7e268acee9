using System.Text.RegularExpressions;
using DetailGen.Details.Parameters;
using DetailGen.Details.Quantities;
using DetailGen.Details.Reading.Shapes;
using DetailGen.Details.Rules;
using DetailGen.Details.Sheets;

namespace DetailGen.Details.Presets;

/// <summary>The keys of a preset.</summary>
public static partial class PresetShape
{
    internal static readonly TextShape Name = new(60, NamePattern(), "letters, digits, hyphen, dot and underscore, a letter or digit first");
    private static readonly TextShape Line = new(120);

    public static IReadOnlyList<string> Nations { get; } = ["england", "scotland", "wales", "northern-ireland", "ireland"];

    /// <summary>Humidity classes of the air inside, driest first.</summary>
    public static IReadOnlyList<string> HumidityClasses { get; } = ["1", "2", "3", "4", "5"];

    /// <summary>°C.</summary>
    internal static NumberShape AirTemperature { get; } = new(0, 40);

    /// <summary>The condition that also picks a climate.</summary>
    public const string Nation = "site.nation";

    /// <summary>The condition that also picks the air inside.</summary>
    public const string Use = "building.use";

    /// <summary>What switches rules; of each the first word is the default.</summary>
    public static IReadOnlyList<ConditionKey> Conditions { get; } =
    [
        new(Nation, Nations),
        new("site.exposure", ["moderate", "sheltered", "severe", "very-severe"]),
        new(Use, ["dwelling", "school", "office", "retail", "sports", "pool", "other"]),
        new("building.work", ["new", "extension", "recovering", "alteration"]),
        new("building.roof-access", ["maintenance", "accessible"]),
    ];

    /// <summary>Targets with the unit and range of their values.</summary>
    public static IReadOnlyList<TargetKey> Targets { get; } =
    [
        new("roof.u-value", QuantityKind.Transmittance, 0.03m, 6, 0.15m, "U-value of the roof, at most, W/m²K."),
        new("wall.u-value", QuantityKind.Transmittance, 0.03m, 6, 0.15m, "U-value of the wall, at most, W/m²K."),
        new(SimulatedFigures.TemperatureFactor, QuantityKind.Bare, 0.01m, 0.999m, 0.75m, "Temperature factor, at least.") { AtLeast = true },
        new(SimulatedFigures.Psi, QuantityKind.Conductivity, -2, 5, 0.10m, "Linear thermal transmittance with internal dimensions, at most, W/mK."),
    ];

    public static IReadOnlyList<string> Levels { get; } =
        ["finished-roof", "deck-top", "structure-top", "ceiling", "upstand-top", "tray-outlet", "wall-head", "coping-top"];

    /// <summary>The one that asks for a simulation.</summary>
    public const string Thermal = "thermal";

    public static IReadOnlyList<string> Companions { get; } = ["exploded", "control-lines", "sequence", "blank", Thermal];

    public static IReadOnlyList<string> Scales { get; } = ["1:2", "1:5", "1:10", "1:20", "1:50"];

    public static IReadOnlyList<string> FrsiFilms { get; } = ["mould", "heat-flow"];

    // beside target, or under it where the target stands that it belongs to
    internal const string FrsiFilm = "frsi-film";

    private static Field Film => new(FrsiFilm, new WordShape(FrsiFilms), "Inside surface film for junction.frsi.");

    /// <summary>What every preset is checked against; components, materials, rules and domains are looked up afterwards.</summary>
    public static MapShape Shape { get; } = Make(null);

    /// <summary>The same with the names that there are, for editors. A preset that extends another may take from it what else is required.</summary>
    public static MapShape For(Components components) => Make(components) with { Instead = "extends" };

    /// <summary>A base that only serves others: any key of a preset, none of them required.</summary>
    public static MapShape BaseFor(Components components) => new([.. Make(components).Fields.Select(field => field with { Required = false })]);

    private static MapShape Make(Components? components) => new(
        new Field("detail", Name, "Id of the detail.", Required: true),
        new Field("title", new TextShape(90), "Title; composed of junction, wall and roof where it is left out."),
        new Field("extends", new TextShape(400), "A base preset, relative to this file; keys here win."),
        new Field("junction", Ids(components, ComponentKind.Junction), "The junction.", Required: true),
        new Field("wall", Ids(components, ComponentKind.Wall), "The wall construction.", Required: true),
        new Field("roof", Ids(components, ComponentKind.Roof), "The roof construction.", Required: true),
        new Field("site", Group("site", new Field("climate", ComponentShape.Id, "Climate for condensation; that of the nation where it is left out.")), "Where it stands."),
        new Field("building", Group("building", new Field("humidity-class", new WordShape(HumidityClasses), "Humidity class of the air inside; that of the use where it is left out."),
            new Field("air-temperature", AirTemperature, "Temperature of the air inside in °C, for condensation; that of the use where it is left out.")), "What it serves."),
        new Field("set", new TableShape(new AnySettingShape(), "parameter", Parameters(components)), "What the author fixes; everything else is solved."),
        new Field("prefer", new TableShape(new AnySettingShape(), "parameter", Parameters(components)), "Wishes, given up before a must or should rule is broken; advice gives way to them."),
        new Field("target", new MapShape([.. Targets.Select(target => new Field(target.Key, target.Shape, target.Meaning)), Film]), "What must be reached."),
        new Field("materials", new TableShape(ComponentShape.Id, "slot", Slots(components)), "Swaps the material of a slot."),
        new Field("rules", new ListShape(new TextShape(60)), "Rule packs; uk where it is left out."),
        new Field("waive", new TableShape(Waiver, "rule id"), "Rules set aside, with a reason."),
        new Field("levels", new MapShape([.. Levels.Select(level => new Field(level, new QuantityShape(QuantityKind.Length, Shown: "m"), "Height above the project's zero."))]), "Levels of the project."),
        new Field("sheet", Sheet, "The sheet; leave out what the tool shall choose."),
        new Field("title-block", TitleBlock, "What stands in the title block."),
        new Field("revisions", new ListShape(Revision), "Revision table, first issue first."),
        new Field("mirror", new FlagShape(), "true flips the drawing."),
        Film);

    private static MapShape Group(string group, params Field[] further) => new([.. Conditions.Where(item => item.Key.StartsWith(group + ".", StringComparison.Ordinal))
        .Select(item => new Field(item.Key[(group.Length + 1)..], new WordShape(item.Words), $"{item.Words[0]} where it is left out.")), .. further]);

    private static MapShape Waiver => new(
        new Field("reason", new TextShape(300), "Why the rule may be broken here.", Required: true),
        new Field("by", Line, "Who answers for it."),
        new Field("reference", Line, "Letter, report or calculation."));

    private static MapShape Sheet => new(
        new Field("paper", new WordShape(SheetShape.Papers), "Sheet format."),
        new Field("scale", new WordShape(Scales), "Scale of the view."),
        new Field("line-group", new WordShape("usual", "copy"), "copy moves the width of every line of the drawing one step up."),
        new Field("reduced-print", new FlagShape(), "true draws larger letters, for sheets that are printed at a smaller size: nothing but labels is under 3.5 mm."),
        new Field("trim-marks", new FlagShape(), "true draws trimming marks, on untrimmed paper."),
        new Field("inset", new WordShape("auto", "none"), "auto, also where it is left out, draws what is too fine for the scale again at 1:2 with its parts named, where the sheets have room."),
        new Field("status-edition", new WordShape("2021", "2018"), "Edition of the annex whose wording of the status is printed."),
        new Field("control-lines", new WordShape("auto", "none"), "auto, also where it is left out, draws a small picture of where water, air, vapour and heat are stopped, where the sheets have room; not where a sheet of them is asked for."),
        new Field("heat-figures", new WordShape("auto", "none"), "auto, also where it is left out, tells U-values, Ψ, temperature factor and condensation in a small table, where the sheets have room."),
        new Field("companions", new ListShape(new WordShape(Companions)), "Further sheets from the same section."),
        new Field("plot", new WordShape("black", "colour"), "Inks of the print."));

    private static MapShape TitleBlock => new(
        new Field("owner", new TextShape(60, Blank: true), "Legal owner."),
        new Field("address", new TextShape(90, Blank: true), "The owner's address."),
        new Field("project", new TextShape(60, Blank: true), "Project."),
        new Field("number", Name with { MaxLength = 40, Blank = true }, "Number of the drawing; also the file name."),
        new Field("revision", RevisionIndex with { Blank = true }, "P01, C01, or P02.03 for a working version."),
        new Field("status", new TextShape(4, StatusPattern(), "S0 to S7, A1 and on, B1 and on, or CR", Blank: true), "Status code."),
        new Field("date", new DateShape(), "Date of issue."),
        new Field("drawn", new TextShape(20, Blank: true), "Creator."),
        new Field("checked", new TextShape(20, Blank: true), "Technical reference."),
        new Field("approved", new TextShape(20, Blank: true), "Approval person."),
        new Field("department", new TextShape(30, Blank: true), "Responsible department, for the file's own data."));

    private static TextShape RevisionIndex => new(6, RevisionPattern(), "P or C and two digits, with a point and two more for a working version");

    private static MapShape Revision => new(
        new Field("rev", RevisionIndex, "Revision.", Required: true),
        new Field("date", new DateShape(), "Date.", Required: true),
        new Field("text", Line, "What changed.", Required: true),
        new Field("drawn", new TextShape(20), "By whom."),
        new Field("checked", new TextShape(20), "By whom."));

    // unknown names are told by the reader, with the nearest; the list is for editors
    private static Shape Ids(Components? components, ComponentKind kind) =>
        components is null ? ComponentShape.Id : new WordShape(components.Ids(kind));

    private static IReadOnlyList<Field>? Parameters(Components? components) => components is null ? null :
    [
        .. components.All.SelectMany(component => component.Parameters).GroupBy(parameter => parameter.Key, StringComparer.Ordinal)
            .OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => new Field(group.Key, Setting([.. group]), group.First().Meaning)),
    ];

    // several constructions may have one key, each with words of its own
    private static Shape Setting(IReadOnlyList<Parameter> parameters)
    {
        IReadOnlyList<Shape> forms =
            [.. parameters.GroupBy(parameter => parameter.Unit).Select(one => new SettingShape(one.Key, [.. one.SelectMany(parameter => parameter.Options).Distinct(StringComparer.Ordinal)]))];
        return forms is [var only] ? only : new EitherShape(forms);
    }

    private static IReadOnlyList<Field>? Slots(Components? components) => components is null ? null :
    [
        .. components.All.SelectMany(component => component.Slots).DistinctBy(slot => slot.Key, StringComparer.Ordinal)
            .OrderBy(slot => slot.Key, StringComparer.Ordinal).Select(slot => new Field(slot.Key, ComponentShape.Id, slot.Name)),
    ];

    [GeneratedRegex("^[A-Za-z0-9][A-Za-z0-9._-]*\\z")]
    private static partial Regex NamePattern();

    [GeneratedRegex("^[PC][0-9]{2}(\\.[0-9]{2})?\\z")]
    private static partial Regex RevisionPattern();

    [GeneratedRegex("^(S[0-7]|[AB][1-9][0-9]?|CR)\\z")]
    private static partial Regex StatusPattern();
}

/// <summary>A circumstance by which rules are switched, and the words for it.</summary>
/// <param name="Key">Such as <c>site.nation</c>.</param>
/// <param name="Words">The first is the default.</param>
public sealed record ConditionKey(string Key, IReadOnlyList<string> Words);

/// <summary>A figure that a preset may ask for.</summary>
/// <param name="Key">Such as <c>roof.u-value</c>.</param>
/// <param name="Kind">Unit of the values, and so of those that follow here.</param>
/// <param name="Least">No smaller value is taken.</param>
/// <param name="Most">No greater value is taken.</param>
/// <param name="Example">To start from, where nothing is known of the detail.</param>
public sealed record TargetKey(string Key, QuantityKind Kind, decimal Least, decimal Most, decimal Example, string Meaning)
{
    /// <summary>The figure must reach the value; of the others it must not pass it.</summary>
    public bool AtLeast { get; init; }

    /// <summary>Only a simulation of the section gives the figure; the others follow from the sizes.</summary>
    public bool IsSimulated => SimulatedFigures.Keys.Contains(Key, StringComparer.Ordinal);

    internal QuantityShape Shape => new(Kind, BareToo: true) { Least = Least, Most = Most };
}
