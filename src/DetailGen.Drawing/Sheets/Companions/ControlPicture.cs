using DetailGen.Drawing.Scenes;
using DetailGen.Drawing.Views;
using DetailGen.Sections;

namespace DetailGen.Drawing.Sheets.Companions;

/// <summary>Where water, air, vapour and heat are stopped: the parts with that task, each by a line along the side that does it, and for heat by its fill, over the thin outlines of the section.</summary>
/// <param name="Drawn">The section without ties and fixings, which would interrupt fills and lines.</param>
/// <param name="Names">Of the parts that have a line, or a fill, in small letters.</param>
internal sealed record ControlPicture(DrawnView Drawn, IReadOnlyList<Item> Items, IReadOnlyDictionary<Roles, IReadOnlyList<string>> Names)
{
    /// <summary>In the order of legends; that heat has a fill and no line comes after them.</summary>
    internal static IReadOnlyList<(Roles Role, string Row, string Words)> Lines { get; } =
    [
        (Roles.WaterBarrier, "control.water", "Water"),
        (Roles.AirBarrier, "control.air", "Air"),
        (Roles.VapourControl, "control.vapour", "Vapour"),
    ];

    internal static ControlPicture Of(SectionView section, ViewOptions options)
    {
        var drawn = section.Draw(options with { Hidden = part => !part.IsAir && part.Presence == Presence.Local });
        var insulation = Having(drawn, Roles.Insulation).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        List<Item> items =
        [
            .. drawn.Items.Where(item => IsFill(item) && item.PartId is { } part && insulation.Contains(part)),
            .. drawn.Items.OfType<Stroke>().Where(IsOutline).Select(CompanionBasis.Thin),
        ];
        var paths = new ControlPaths(section.Section, drawn, options.Window, [.. Lines.Select(line => line.Role)]);
        var names = new Dictionary<Roles, IReadOnlyList<string>> { [Roles.Insulation] = Named(Having(drawn, Roles.Insulation)) };
        foreach (var (role, row, _) in Lines)
        {
            var along = Having(drawn, role).Select(part => (Part: part, Lines: paths.Of(part, role))).Where(one => one.Lines.Count > 0).ToArray();
            items.AddRange(along.SelectMany(one => one.Lines.Select(line => new Stroke(row, line) { PartId = one.Part.Id })));
            names[role] = Named(along.Select(one => one.Part));
        }

        return new(drawn, items, names);
    }

    /// <summary>Signs of a legend, so wide, in the order of its lines; the last is that of heat. mm.</summary>
    internal static IEnumerable<(Roles Role, Stroke Sign, string Words)> Legend(double width) =>
        Lines.Select(line => (line.Role, Frame.Line(line.Row, default, new(width, 0)), line.Words)).Append((Roles.Insulation, Zigzag(width), "Heat: filled"));

    private static IEnumerable<DrawnPart> Having(DrawnView drawn, Roles role) =>
        drawn.Parts.Where(part => part.Part.Roles.HasFlag(role) && part.Part.Presence == Presence.Cut);

    // Bed joints say nothing here.
    private static bool IsOutline(Stroke stroke) =>
        stroke.Row == Rows.Break || (stroke.Row.StartsWith("cut.", StringComparison.Ordinal) && stroke.PartId?.EndsWith("/bed", StringComparison.Ordinal) != true);

    private static bool IsFill(Item item) => item.Row.StartsWith("fill.", StringComparison.Ordinal) || item.Row.StartsWith("solid.", StringComparison.Ordinal);

    private static string[] Named(IEnumerable<DrawnPart> parts) => [.. parts.Select(part => part.Part.Name.ToLowerInvariant()).Distinct(StringComparer.Ordinal)];

    private static Stroke Zigzag(double width) => new("fill.IR.roof", [.. Enumerable.Range(0, 7).Select(i => new PaperPoint(width * i / 6, i % 2 == 0 ? -1.5 : 1.5))]);
}
