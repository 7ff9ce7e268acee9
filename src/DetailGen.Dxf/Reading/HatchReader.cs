using System.Collections.Immutable;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Reading;

/// <summary>A fill: its paths, then its lines. Counts in the record are not relied on; a path ends where the next begins.</summary>
internal static class HatchReader
{
    private const int IsPolyline = 2;

    /// <summary>Null for a fill whose paths are made of single edges, which this project does not write.</summary>
    public static Hatch? Read(RecordReader record, string layer)
    {
        var paths = new List<ImmutableArray<Vertex>>();
        var at = record.First;
        while (at < record.End && record.Code(at) != 92)
        {
            at++;
        }

        while (at < record.End && record.Code(at) == 92)
        {
            if ((record.IntegerAt(at) & IsPolyline) == 0)
            {
                return null;
            }

            at++;
            paths.Add(Path(record, ref at));
        }

        if (paths.Count == 0)
        {
            return null;
        }

        var isSolid = record.Integer(70) != 0;
        return new(paths[0], isSolid ? null : new(record.Text(2), Lines(record, at))) { Layer = layer, Holes = [.. paths.Skip(1)] };
    }

    private static ImmutableArray<Vertex> Path(RecordReader record, ref int at)
    {
        var vertices = ImmutableArray.CreateBuilder<Vertex>();
        for (; at < record.End && record.Code(at) is 72 or 73 or 93 or 10 or 20 or 42 or 97 or 330; at++)
        {
            EntityReader.AddTo(vertices, record, at);
        }

        return vertices.ToImmutable();
    }

    private static ImmutableArray<PatternLine> Lines(RecordReader record, int at)
    {
        var lines = ImmutableArray.CreateBuilder<PatternLine>();
        var dashes = ImmutableArray.CreateBuilder<double>();
        PatternLine? line = null;
        for (; at < record.End; at++)
        {
            switch (record.Code(at))
            {
                case 53:
                    Close();
                    line = new(record.NumberAt(at), default, default, []);
                    break;
                case 43 when line is not null:
                    line = line with { Base = line.Base with { X = record.NumberAt(at) } };
                    break;
                case 44 when line is not null:
                    line = line with { Base = line.Base with { Y = record.NumberAt(at) } };
                    break;
                case 45 when line is not null:
                    line = line with { Offset = line.Offset with { X = record.NumberAt(at) } };
                    break;
                case 46 when line is not null:
                    line = line with { Offset = line.Offset with { Y = record.NumberAt(at) } };
                    break;
                case 49 when line is not null:
                    dashes.Add(record.NumberAt(at));
                    break;
                default:
                    break;
            }
        }

        Close();
        return lines.ToImmutable();

        void Close()
        {
            if (line is not null)
            {
                lines.Add(line with { Dashes = dashes.ToImmutable() });
                dashes.Clear();
            }
        }
    }
}
