using System.Security.Cryptography;
using System.Text;
using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Writing;

/// <summary>Digests of what is drawn: of an entity, of a part, of the whole. They show edits; they are no protection against forgery.</summary>
/// <remarks>SHA-256 of an entity's line of values: kind, space, layer, colour, linetype, weight and the values of its kind, on the grid
/// of the file. The digest of several is that of their digests as hex lines, sorted ordinal and joined by line feeds, so that the order
/// of drawing and of saving does not count.</remarks>
internal sealed class ContentDigest
{
    public const string Algorithm = "sha-256";

    private readonly Dictionary<(string Space, int Index), string> entities = [];

    private ContentDigest(IReadOnlyList<PlannedSpace> spaces)
    {
        var sink = new CanonSink();
        var all = new List<string>();
        var parts = new SortedDictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var space in spaces)
        {
            for (var i = 0; i < space.Entities.Count; i++)
            {
                var entity = space.Entities[i];
                var digest = Of(entity, space.Name, sink);
                entities.Add((space.Name, i), digest);
                all.Add(digest);
                if (entity.Part is { } part)
                {
                    (parts.TryGetValue(part.Id, out var list) ? list : parts[part.Id] = []).Add(digest);
                }
            }
        }

        Count = all.Count;
        Whole = OfAll(all);
        Parts = [.. parts.Select(part => (part.Key, part.Value.Count, OfAll(part.Value)))];
    }

    /// <summary>Of every entity of the drawing; 64 hex digits.</summary>
    public string Whole { get; }

    public int Count { get; }

    /// <summary>Sorted by id.</summary>
    public IReadOnlyList<(string Id, int Count, string Digest)> Parts { get; }

    /// <summary>Pictures of dimensions are left out: any program redraws them from the dimension.</summary>
    public static ContentDigest Of(WritePlan plan) => new([.. plan.Spaces.Where(space => !space.IsPicture)]);

    /// <summary>The first 16 hex digits of an entity's digest.</summary>
    public string Short(PlannedSpace space, int index) => entities[(space.Name, index)][..16];

    private static string Of(Entity entity, string space, CanonSink sink)
    {
        sink.Clear();
        sink.Name(entity.Kind);
        sink.Name(space);
        sink.Name(entity.Layer);
        sink.Integer(62, entity.Color?.Index ?? 256);
        sink.Integer(420, entity.Color?.TrueColor ?? -1);
        sink.Name(entity.Linetype ?? "ByLayer");
        sink.Integer(370, entity.Weight ?? -1);
        entity.Walk(sink);
        return Convert.ToHexStringLower(SHA256.HashData(sink.Line));
    }

    private static string OfAll(List<string> digests)
    {
        digests.Sort(StringComparer.Ordinal);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(string.Join('\n', digests))));
    }
}
