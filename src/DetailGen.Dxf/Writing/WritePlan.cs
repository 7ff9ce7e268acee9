using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Tables;
using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Everything that will be written, cleaned, checked and in order; and the extents of model space.</summary>
internal sealed class WritePlan
{
    private const int MostEntities = 200_000;
    private const double FarthestCoordinate = 1e6; // mm

    private static readonly Sheet EmptySheet = new("Sheet", "ISO A3", 420, 297);

    private readonly DxfDocument _document;
    private readonly References _references;
    private readonly Dictionary<string, PlannedSpace> _blocks = new(Names.Comparer);
    private readonly List<PlannedSpace> _pictures = [];
    private readonly Bounds _box = new();

    public WritePlan(DxfDocument document)
    {
        _document = document;
        if (!(document.PlotScale > 0 && double.IsFinite(document.PlotScale)))
        {
            throw new ArgumentException("The plot scale must be above 0.");
        }

        Layers = LayersOf(document);
        _references = new References(document, Layers);
        Sheets = document.Sheets.IsEmpty ? [EmptySheet] : document.Sheets;
        Names.Unique(Sheets.Select(sheet => sheet.Name).Append("Model"), "sheet");

        foreach (var block in document.Blocks)
        {
            var space = new PlannedSpace(block.Name) { Block = block };
            FillBlock(space, block);
            _blocks.Add(block.Name, space);
        }

        Model = new PlannedSpace(PlannedSpace.Model);
        Fill(Model, document.Model, dashScale: 1);
        List<PlannedSpace> papers = [];
        foreach (var sheet in Sheets)
        {
            var name = papers.Count == 0 ? PlannedSpace.FirstSheet : string.Create(null, $"{PlannedSpace.FirstSheet}{papers.Count - 1}");
            var paper = new PlannedSpace(name) { Sheet = sheet };
            DemandSheet(sheet);
            Fill(paper, sheet.Content, dashScale: 1 / document.PlotScale);
            papers.Add(paper);
        }

        Papers = papers;
        Spaces = [Model, .. papers, .. document.Blocks.Select(block => _blocks[block.Name]), .. _pictures];
        Extents = Model.Extents;
        if (Extents.IsEmpty)
        {
            Extents.Add(default(DxfPoint));
        }

        DemandLimits();

        Groups = GroupsOf(Spaces);
    }

    public DxfDocument Document => _document;

    public PlannedSpace Model { get; }

    public IReadOnlyList<PlannedSpace> Papers { get; }

    public IReadOnlyList<Sheet> Sheets { get; }

    /// <summary>In the order of their records: model space, sheets, blocks, pictures of dimensions.</summary>
    public IReadOnlyList<PlannedSpace> Spaces { get; }

    /// <summary>Sorted by name, layer 0 among them.</summary>
    public IReadOnlyList<Layer> Layers { get; }

    /// <summary>Names, sorted, and where their members lie.</summary>
    public IReadOnlyList<(string Name, List<(PlannedSpace Space, int Index)> Members)> Groups { get; }

    public Bounds Extents { get; }

    private static List<Layer> LayersOf(DxfDocument document)
    {
        List<Layer> layers = [.. document.Layers];
        if (!layers.Exists(layer => layer.Name == "0"))
        {
            layers.Add(new Layer("0"));
        }

        layers.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));
        return layers;
    }

    private static List<(string, List<(PlannedSpace, int)>)> GroupsOf(IReadOnlyList<PlannedSpace> spaces)
    {
        var groups = new SortedDictionary<string, List<(PlannedSpace, int)>>(StringComparer.Ordinal);
        foreach (var space in spaces)
        {
            for (var i = 0; i < space.Entities.Count; i++)
            {
                if (space.Entities[i].Group is { } name)
                {
                    (groups.TryGetValue(name, out var members) ? members : groups[name] = []).Add((space, i));
                }
            }
        }

        Names.Unique(groups.Keys, "group");
        foreach (var (name, members) in groups)
        {
            if (members.Exists(member => member.Item1 != members[0].Item1 || member.Item1.Block is not null))
            {
                throw new ArgumentException($"The group {name} lies in several spaces or in a block.");
            }
        }

        return [.. groups.Select(group => (group.Key, group.Value))];
    }

    private void DemandLimits()
    {
        if (Spaces.Sum(space => space.Entities.Count) > MostEntities)
        {
            throw new ArgumentException($"A drawing has more than {MostEntities} entities.");
        }
    }

    private void DemandSheet(Sheet sheet)
    {
        if (!(sheet.Width > 0 && sheet.Height > 0))
        {
            throw new ArgumentException($"The sheet {sheet.Name} has no size.");
        }

        foreach (var viewport in sheet.Viewports)
        {
            _references.DemandLayer(viewport.Layer);
            foreach (var layer in viewport.Frozen)
            {
                _references.DemandLayer(layer);
            }

            if (!(viewport.Width > 0 && viewport.Height > 0 && viewport.Scale > 0))
            {
                throw new ArgumentException($"A viewport of the sheet {sheet.Name} has no size or no scale.");
            }
        }
    }

    private void FillBlock(PlannedSpace space, Block block)
    {
        foreach (var entity in block.Content)
        {
            if (entity is Insert or Dimension)
            {
                throw new ArgumentException($"The block {block.Name} holds another block.");
            }
        }

        var tags = new HashSet<string>(StringComparer.Ordinal);
        foreach (var field in block.Fields)
        {
            field.Demand();
            _references.DemandLayer(field.Layer ?? "0");
            if (!tags.Add(field.Tag))
            {
                throw new ArgumentException($"The block {block.Name} has two fields {field.Tag}.");
            }
        }

        Fill(space, block.Content, dashScale: 1);
    }

    private void Fill(PlannedSpace space, IReadOnlyList<Entity> entities, double dashScale)
    {
        foreach (var entity in entities)
        {
            try
            {
                if (entity.Cleaned() is { } clean)
                {
                    _references.Demand(clean);
                    var scaled = dashScale != 1 && clean.LinetypeScale is null && _references.IsDashed(clean) ? clean with { LinetypeScale = dashScale } : clean;
                    var settled = Settled(scaled);
                    space.Entities.Add(settled);
                    AddExtents(space, settled);
                }
            }
            catch (ArgumentException fault)
            {
                throw entity.Told(fault);
            }
        }
    }

    private void AddExtents(PlannedSpace space, Entity entity)
    {
        _box.Clear();
        entity.Extend(_box);
        var farthest = Math.Max(Math.Max(-_box.Left, _box.Right), Math.Max(-_box.Bottom, _box.Top));
        if (!(farthest <= FarthestCoordinate)) // NaN too
        {
            throw new ArgumentException($"It reaches to {farthest} mm; {FarthestCoordinate} is the farthest from the origin.");
        }

        space.Extents.Add(_box, default);
    }

    private Entity Settled(Entity entity) => entity switch
    {
        Dimension dimension => WithPicture(dimension),
        Insert insert => WithFields(insert),
        _ => entity,
    };

    private Dimension WithPicture(Dimension dimension)
    {
        var picture = new PlannedSpace(string.Create(null, $"*D{_pictures.Count + 1}")) { IsPicture = true };
        _pictures.Add(picture);
        foreach (var piece in dimension.Drawn())
        {
            if (piece.Cleaned() is { } clean)
            {
                _references.Demand(clean);
                picture.Entities.Add(clean);
            }
        }

        return dimension with { PictureBlock = picture.Name };
    }

    private Insert WithFields(Insert insert)
    {
        var space = _blocks[insert.Block];
        var block = space.Block!;
        foreach (var value in insert.Values)
        {
            if (!block.Fields.Any(field => field.Tag == value.Tag))
            {
                throw new ArgumentException($"The block {block.Name} has no field {value.Tag}.");
            }
        }

        var shift = insert.Position - block.Base;
        return insert with
        {
            Content = space.Extents,
            Shift = shift,
            Fields = [.. block.Fields.Select(field => Placed(field, insert, shift))],
        };
    }

    private static PlacedAttribute Placed(AttributeDefinition field, Insert insert, DxfPoint shift)
    {
        var value = insert.Values.LastOrDefault(value => value.Tag == field.Tag);
        return new(field.Tag, value?.Value ?? "", field.Position + shift, value?.Height ?? field.Height, field.Layer ?? insert.Layer);
    }
}
