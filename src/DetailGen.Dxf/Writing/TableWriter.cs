using DetailGen.Dxf.Tags;

namespace DetailGen.Dxf.Writing;

/// <summary>Heads and rows of tables; knows which table is open.</summary>
internal sealed class TableWriter(TagWriter writer, Handles handles)
{
    private string _table = "";

    public void Begin(string name, int rows)
    {
        _table = name;
        writer.Text(0, "TABLE");
        writer.Text(2, name);
        writer.Handle(5, handles.Head(name));
        writer.Handle(330, 0);
        writer.Marker("AcDbSymbolTable");
        writer.Integer(70, rows);
    }

    /// <summary>Begins a row; what belongs to its class follows.</summary>
    public void Row(string name, string marker)
    {
        writer.Text(0, _table);
        writer.Handle(_table == "DIMSTYLE" ? 105 : 5, handles.Row(_table, name));
        writer.Handle(330, handles.Head(_table));
        writer.Marker("AcDbSymbolTableRecord");
        writer.Marker(marker);
        writer.Text(2, name);
    }

    public void End() => writer.Text(0, "ENDTAB");

    public void Empty(string name)
    {
        Begin(name, 0);
        End();
    }
}
