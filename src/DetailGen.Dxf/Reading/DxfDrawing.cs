using System.Collections.Immutable;
using DetailGen.Dxf.Document;
using DetailGen.Dxf.Entities;
using DetailGen.Dxf.Writing;

namespace DetailGen.Dxf.Reading;

/// <summary>An entity as it was read.</summary>
/// <param name="Entity">Null where the kind is none that this project writes; its tags are kept in the file all the same.</param>
/// <param name="Kind">The record's name, such as LINE.</param>
/// <param name="Layer">As the record says.</param>
/// <param name="Space">Name of the block that stands for the place: model space, a sheet, or a block.</param>
/// <param name="Line">Where it stands in the file.</param>
/// <param name="Part">The part that it was drawn for, as this project noted; null without such a note.</param>
/// <param name="IssuedDigest">What this project noted of it when it was written; null for an entity that others drew.</param>
public sealed record ReadEntity(Entity? Entity, string Kind, string Layer, string Space, int Line, string? Part, string? IssuedDigest);

/// <summary>A drawing read back: its entities, and what this project wrote into it.</summary>
public sealed class DxfDrawing
{
    private DxfDrawing(DxfFile file) => File = file;

    public DxfFile File { get; }

    /// <summary>Of model space, sheets and blocks, in the order of the file, windows of sheets among them; pictures of dimensions, the windows that stand for sheets themselves and definitions of fields are left out.</summary>
    public IReadOnlyList<ReadEntity> Entities { get; private set; } = [];

    public IReadOnlyList<string> Layers { get; private set; } = [];

    /// <summary>Layers that are switched off or frozen: nothing on them shows anywhere.</summary>
    public IReadOnlyList<string> HiddenLayers { get; private set; } = [];

    /// <summary>Null where the drawing carries none, or one that is damaged (see the file's findings).</summary>
    public Provenance? Provenance { get; private set; }

    /// <summary>What was drawn when it was issued; null as for the provenance.</summary>
    public IssuedContent? Issued { get; private set; }

    /// <exception cref="DxfReadException">No drawing, one beyond the limits, or one with a block that inserts itself.</exception>
    public static DxfDrawing Read(Stream input, ReadLimits? limits = null) => Of(DxfFile.Read(input, limits));

    /// <exception cref="DxfReadException">A block inserts itself.</exception>
    public static DxfDrawing Of(DxfFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        BlockGraph.Check(file);
        var (provenance, issued) = OwnRecords.Read(file);
        var layers = LayerRows.Read(file);
        return new(file)
        {
            Entities = new EntitiesOf(file, layers).All,
            Layers = layers.Names,
            HiddenLayers = layers.Hidden,
            Provenance = provenance,
            Issued = issued,
        };
    }

    /// <summary>Walks the two sections that hold entities.</summary>
    private sealed class EntitiesOf
    {
        private readonly DxfFile _file;
        private readonly LayerRows _layers;
        private readonly List<ReadEntity> _all = [];
        private (RecordReader Record, string Space, List<PlacedAttribute> Fields)? _insert;

        public EntitiesOf(DxfFile file, LayerRows layers)
        {
            (_file, _layers) = (file, layers);
            ReadBlocks();
            foreach (var record in file.Records("ENTITIES"))
            {
                var reader = new RecordReader(file, record);
                Add(reader, IsOnPaper(reader) ? PlannedSpace.FirstSheet : PlannedSpace.Model);
            }

            CloseInsert();
        }

        public IReadOnlyList<ReadEntity> All => _all;

        private void ReadBlocks()
        {
            var (block, isPicture) = ("", false);
            foreach (var record in _file.Records("BLOCKS"))
            {
                var reader = new RecordReader(_file, record);
                switch (record.Kind)
                {
                    case "BLOCK":
                        CloseInsert();
                        block = reader.Text(2);
                        isPicture = block.StartsWith("*D", StringComparison.OrdinalIgnoreCase);
                        break;
                    case "ENDBLK":
                        CloseInsert();
                        break;
                    case not null when !isPicture:
                        Add(reader, block);
                        break;
                    default:
                        break;
                }
            }
        }

        private void Add(RecordReader record, string space)
        {
            switch (record.Kind)
            {
                case "ATTRIB" when _insert is { } open:
                    if (Lenient(record, () => EntityReader.Field(record)) is { } field)
                    {
                        open.Fields.Add(field);
                    }

                    return;
                case "SEQEND" when _insert is not null:
                    CloseInsert();
                    return;
                case "ATTDEF":
                case "VIEWPORT" when IsSheetItself(record):
                    return;
                case "INSERT" when Wants(record):
                    CloseInsert();
                    _insert = (record, space, []);
                    return;
                default:
                    CloseInsert();
                    Take(record, space, []);
                    return;
            }
        }

        // The first window of a sheet stands for the sheet, and every program writes it as it likes.
        private bool IsSheetItself(RecordReader record) => record.Noted("d=") is null && Lenient(record, () => record.Integer(69) <= 1);

        private bool IsOnPaper(RecordReader record) => Lenient(record, () => record.Integer(67) == 1);

        private bool Wants(RecordReader record) => Lenient(record, () => record.Integer(66) == 1);

        private T? Lenient<T>(RecordReader record, Func<T> says)
        {
            try
            {
                return says();
            }
            catch (UnreadableException fault)
            {
                _file.Found(fault.Tag, $"{record.Kind}: {fault.Message}.");
                return default;
            }
        }

        private void CloseInsert()
        {
            if (_insert is { } open)
            {
                _insert = null;
                Take(open.Record, open.Space, [.. open.Fields]);
            }
        }

        private void Take(RecordReader record, string space, ImmutableArray<PlacedAttribute> fields)
        {
            Entity? entity = null;
            try
            {
                entity = EntityReader.Read(record, fields);
                entity = entity is Window window ? window with { Frozen = _layers.Frozen(record) } : entity;
            }
            catch (UnreadableException fault)
            {
                _file.Found(fault.Tag, $"{record.Kind}: {fault.Message}.");
            }

            _all.Add(new(entity, record.Kind, record.Text(8, "0"), space, record.Line, record.Noted("part="), record.Noted("d=")));
        }
    }
}
