using DetailGen.Dxf.Entities;

namespace DetailGen.Dxf.Writing;

/// <summary>The handles of all records, given in one pass in the order of writing, so that none can dangle or repeat.</summary>
internal sealed class Handles
{
    private const int First = 0x100;

    private readonly Dictionary<(string Table, string Name), int> _rows = [];
    private readonly Dictionary<string, int> _objects = new(StringComparer.Ordinal);
    private int _next = First;

    public Handles(WritePlan plan)
    {
        foreach (var (table, names) in TablesSection.Rows(plan))
        {
            _rows.Add((table, ""), Take());
            foreach (var name in names)
            {
                _rows.Add((table, name), Take());
            }
        }

        foreach (var space in plan.Spaces)
        {
            space.Record = _rows[(TablesSection.BlockRecord, space.Name)];
            space.Begin = Take();
            if (!space.LiesInEntities)
            {
                TakeContent(space);
            }

            space.End = Take();
        }

        TakeContent(plan.Model);
        TakeContent(plan.Papers[0]);
        foreach (var key in ObjectsSection.Keys(plan))
        {
            _objects.Add(key, Take());
        }

        foreach (var (space, key) in ObjectsSection.Layouts(plan))
        {
            space.Layout = _objects[key];
        }
    }

    /// <summary>One above the highest.</summary>
    public int Seed => _next;

    /// <summary>Of a table's head.</summary>
    public int Head(string table) => _rows[(table, "")];

    public int Row(string table, string name) => _rows[(table, name)];

    public int Object(string key) => _objects[key];

    private int Take() => _next++;

    private void TakeContent(PlannedSpace space)
    {
        for (var i = 0; i < space.Block?.Fields.Length; i++)
        {
            space.Fields.Add(Take());
        }

        for (var i = 0; i <= space.Sheet?.Viewports.Length; i++)
        {
            space.Viewports.Add(Take()); // one more than the sheet lists: the first stands for the sheet itself
        }

        foreach (var entity in space.Entities)
        {
            space.Handles.Add(Take());
            if (entity is Insert { Fields: { IsEmpty: false } fields })
            {
                _next += fields.Length + 1;
            }
        }
    }
}
