using System.Text;
using DetailGen.Dxf.Reading;

namespace DetailGen.Dxf.Tests.Reading;

/// <summary>The sample drawing, edited as another program might: on the text of the file, with no knowledge of our reader or writer.</summary>
internal sealed class Edited
{
    private readonly List<List<(string Code, string Value)>> _records = [];

    public Edited(byte[]? bytes = null)
    {
        var lines = Encoding.UTF8.GetString(bytes ?? SampleDrawing.Bytes(SampleDrawing.Document())).Split("\r\n");
        for (var i = 0; i + 1 < lines.Length; i += 2)
        {
            if (lines[i].Trim() == "0")
            {
                _records.Add([]);
            }

            _records[^1].Add((lines[i], lines[i + 1]));
        }
    }

    public byte[] Bytes => Encoding.UTF8.GetBytes(string.Concat(_records.SelectMany(record => record).Select(tag => tag.Code + "\r\n" + tag.Value + "\r\n")));

    public DxfDrawing Drawing => DxfDrawing.Read(new MemoryStream(Bytes));

    /// <summary>The records of a kind that have a value.</summary>
    public List<int> Find(string kind, string value) =>
        [.. Enumerable.Range(0, _records.Count).Where(i => _records[i][0].Value == kind && _records[i].Exists(tag => tag.Value == value))];

    public Edited Set(int record, int code, Func<string, string> value)
    {
        for (var i = 0; i < _records[record].Count; i++)
        {
            var (written, old) = _records[record][i];
            if (written.Trim() == code.ToString(System.Globalization.CultureInfo.InvariantCulture))
            {
                _records[record][i] = (written, value(old));
            }
        }

        return this;
    }

    public Edited Remove(int record)
    {
        _records.RemoveAt(record);
        return this;
    }

    public Edited Insert(int before, params (int Code, string Value)[] tags)
    {
        _records.Insert(before, [.. tags.Select(tag => (tag.Code.ToString(System.Globalization.CultureInfo.InvariantCulture).PadLeft(3), tag.Value))]);
        return this;
    }

    public Edited Copy(int record, string handle)
    {
        _records.Insert(record + 1, [.. _records[record].Select(tag => tag.Code.Trim() == "5" ? (tag.Code, handle) : tag)]);
        return this;
    }
}
