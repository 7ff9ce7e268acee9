using System.Collections;

namespace DetailGen.Dxf.Tags;

/// <summary>Whether a group says something of its own.</summary>
internal enum Role
{
    Value,

    /// <summary>It follows from other values, so the digest passes it over.</summary>
    Derived,
}

/// <summary>How an entity lies in the file: its groups in the order of writing. Whoever writes or digests walks the same rows.</summary>
/// <param name="kind">The record's name behind group 0.</param>
internal sealed class AttributeTable<T>(string kind) : IEnumerable
{
    private readonly List<Action<T, ITagSink>> _rows = [];

    public string Kind { get; } = kind;

    public void Walk(T entity, ITagSink sink)
    {
        foreach (var row in _rows)
        {
            row(entity, sink);
        }
    }

    /// <summary>A marker: what follows belongs to this class.</summary>
    public void Add(string marker) => _rows.Add((_, sink) =>
    {
        if (!sink.ValuesOnly)
        {
            sink.Marker(marker);
        }
    });

    /// <summary>A group that is always the same.</summary>
    public void Add(int code, double constant)
    {
        var isNumber = GroupCodes.IsNumber(code);
        Demand(isNumber || GroupCodes.IsInteger(code), code);
        _rows.Add((_, sink) =>
        {
            if (!sink.ValuesOnly && isNumber)
            {
                sink.Number(code, constant, Grid.Length);
            }
            else if (!sink.ValuesOnly)
            {
                sink.Integer(code, (int)constant);
            }
        });
    }

    /// <summary>A length. Where <paramref name="when"/> does not hold it is left out of the file, because readers know the default.</summary>
    public void Add(int code, Func<T, double> get, Role role = Role.Value, Func<T, bool>? when = null) => Add(code, get, Grid.Length, role, when);

    public void Add(int code, Func<T, double> get, Grid grid, Role role = Role.Value, Func<T, bool>? when = null)
    {
        Demand(GroupCodes.IsNumber(code), code);
        AddRow((entity, sink) => sink.Number(code, get(entity), grid), role, when);
    }

    public void Add(int code, Func<T, int> get, Role role = Role.Value, Func<T, bool>? when = null)
    {
        Demand(GroupCodes.IsInteger(code), code);
        AddRow((entity, sink) => sink.Integer(code, get(entity)), role, when);
    }

    public void Add(int code, Func<T, string> get, Role role = Role.Value, Func<T, bool>? when = null)
    {
        Demand(GroupCodes.IsString(code), code);
        AddRow((entity, sink) => sink.Text(code, get(entity)), role, when);
    }

    public void Add(int code, Func<T, DxfPoint> get, Role role = Role.Value, Func<T, bool>? when = null)
    {
        Demand(GroupCodes.IsNumber(code), code);
        AddRow((entity, sink) => sink.Point(code, get(entity)), role, when);
    }

    /// <summary>Groups that repeat: vertices, paths, chunks.</summary>
    public void Add(Action<T, ITagSink> list) => _rows.Add(list);

    IEnumerator IEnumerable.GetEnumerator() => _rows.GetEnumerator();

    private void AddRow(Action<T, ITagSink> row, Role role, Func<T, bool>? when) => _rows.Add((role, when) switch
    {
        (Role.Value, null) => row,
        _ => (entity, sink) =>
        {
            if (sink.ValuesOnly ? role is Role.Value : when?.Invoke(entity) ?? true)
            {
                row(entity, sink);
            }
        }
    });

    private void Demand(bool fits, int code)
    {
        if (!fits)
        {
            throw new InvalidOperationException($"{Kind} has a row of the wrong kind for group {code}.");
        }
    }
}
