using DetailGen.Dxf.Document;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Dictionaries, layouts, groups, and our own records. The root dictionary is the first object.</summary>
internal static class ObjectsSection
{
    public const string PlotStyle = "plot style";
    public const string GlobalMaterial = "material Global";

    private const string Root = "root";
    private const string GroupList = "groups";
    private const string LayoutList = "layouts";
    private const string MaterialList = "materials";
    private const string LineList = "lines";
    private const string PlotList = "plot settings";
    private const string PlotStyleList = "plot styles";
    private const string LineStyle = "line style";
    private const string Own = "own";
    private const string Digest = "own DIGEST";
    private const string Parameters = "own PARAMETERS";
    private const string Tool = "own TOOL";
    private static readonly string[] Materials = ["ByBlock", "ByLayer", "Global"];

    /// <summary>What each object is called here, in the order of writing.</summary>
    public static IEnumerable<string> Keys(WritePlan plan) =>
    [
        Root, GroupList, LayoutList, MaterialList, LineList, PlotList, PlotStyleList, PlotStyle,
        .. Layouts(plan).Select(layout => layout.Key),
        .. Materials.Select(MaterialKey),
        LineStyle,
        .. plan.Groups.Select(group => GroupKey(group.Name)),
        .. plan.Document.Provenance is null ? (IEnumerable<string>)[] : [Own, Digest, Parameters, Tool],
    ];

    public static IEnumerable<(PlannedSpace Space, string Key)> Layouts(WritePlan plan) =>
        plan.Papers.Prepend(plan.Model).Select(space => (space, "layout " + LayoutWriter.NameOf(space)));

    public static void Write(TagWriter writer, WritePlan plan, Handles handles, ContentDigest? digest)
    {
        var objects = new ObjectWriter(writer, handles);
        writer.Text(0, "SECTION");
        writer.Text(2, "OBJECTS");
        List<(string, string)> entries =
        [
            ("ACAD_GROUP", GroupList), ("ACAD_LAYOUT", LayoutList), ("ACAD_MATERIAL", MaterialList), ("ACAD_MLINESTYLE", LineList),
            ("ACAD_PLOTSETTINGS", PlotList), ("ACAD_PLOTSTYLENAME", PlotStyleList),
        ];
        if (digest is not null)
        {
            entries.Add((Provenance.Application, Own));
        }

        objects.Dictionary(Root, null, entries);
        objects.Dictionary(GroupList, Root, plan.Groups.Select(group => (group.Name, GroupKey(group.Name))));
        objects.Dictionary(LayoutList, Root, Layouts(plan).Select(layout => (LayoutWriter.NameOf(layout.Space), layout.Key)));
        objects.Dictionary(MaterialList, Root, Materials.Select(name => (name, MaterialKey(name))));
        objects.Dictionary(LineList, Root, [("Standard", LineStyle)]);
        objects.Dictionary(PlotList, Root, []);
        FixedObjects.WritePlotStyles(writer, handles.Object(PlotStyleList), handles.Object(Root), handles.Object(PlotStyle));
        foreach (var (space, order) in plan.Papers.Prepend(plan.Model).Select((space, order) => (space, order)))
        {
            LayoutWriter.Write(writer, plan, space, order, handles.Object(LayoutList));
        }

        foreach (var name in Materials)
        {
            FixedObjects.WriteMaterial(writer, name, handles.Object(MaterialKey(name)), handles.Object(MaterialList));
        }

        FixedObjects.WriteLineStyle(writer, handles.Object(LineStyle), handles.Object(LineList));
        foreach (var (name, members) in plan.Groups)
        {
            writer.Begin("GROUP", handles.Object(GroupKey(name)), handles.Object(GroupList));
            writer.Marker("AcDbGroup");
            writer.Text(300, name);
            writer.Integer(70, 0);
            writer.Integer(71, 1);
            foreach (var (space, index) in members)
            {
                writer.Handle(340, space.Handles[index]);
            }
        }

        if (digest is not null && plan.Document.Provenance is { } provenance)
        {
            WriteOwn(writer, objects, provenance, digest);
        }

        writer.Text(0, "ENDSEC");
    }

    private static void WriteOwn(TagWriter writer, ObjectWriter objects, Provenance provenance, ContentDigest digest)
    {
        objects.Dictionary(Own, Root, [("DIGEST", Digest), ("PARAMETERS", Parameters), ("TOOL", Tool)], ownsHard: true);
        objects.Record(Digest, Own);
        writer.Text(1, ContentDigest.Algorithm + " " + digest.Whole);
        writer.Integer(90, digest.Count);
        foreach (var part in digest.Parts)
        {
            writer.Text(1, part.Id);
            writer.Integer(90, part.Count);
            writer.Text(1, part.Digest);
            writer.Point(10, part.Corner);
        }

        objects.Record(Parameters, Own);
        objects.LongText(provenance.Parameters);
        objects.Record(Tool, Own);
        writer.Text(1, provenance.Tool);
    }

    private static string MaterialKey(string name) => "material " + name;

    private static string GroupKey(string name) => "group " + name;
}
