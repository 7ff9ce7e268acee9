using System.Collections.Immutable;

namespace DetailGen.Dxf.Reading;

/// <summary>The layers of a drawing as its table lists them.</summary>
internal sealed class LayerRows
{
    private const int FrozenFlag = 1;

    private readonly Dictionary<ulong, string> _byHandle = [];

    private LayerRows()
    {
    }

    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>Switched off, by a negative colour, or frozen.</summary>
    public required IReadOnlyList<string> Hidden { get; init; }

    public static LayerRows Read(DxfFile file)
    {
        RecordReader[] rows = [.. file.Records("TABLES").Where(record => record.Kind == "LAYER").Select(record => new RecordReader(file, record))];
        var layers = new LayerRows { Names = [.. rows.Select(row => row.Text(2))], Hidden = [.. rows.Where(IsHidden).Select(row => row.Text(2))] };
        foreach (var row in rows.Where(row => row.Has(5)))
        {
            layers._byHandle.TryAdd(row.Handle(5), row.Text(2));
        }

        return layers;

        bool IsHidden(RecordReader row)
        {
            try
            {
                return (row.Integer(70) & FrozenFlag) != 0 || row.Integer(62, 1) < 0;
            }
            catch (UnreadableException fault)
            {
                file.Found(fault.Tag, $"LAYER: {fault.Message}.");
                return false;
            }
        }
    }

    /// <summary>Names of the layers that a window does not show, sorted; those that the table lacks are left out.</summary>
    public ImmutableArray<string> Frozen(RecordReader window)
    {
        var names = new List<string>();
        for (var tag = window.First; tag < window.End; tag++)
        {
            if (window.Code(tag) == 331 && _byHandle.TryGetValue(window.HandleAt(tag), out var name))
            {
                names.Add(name);
            }
        }

        return [.. names.Order(StringComparer.Ordinal)];
    }
}
