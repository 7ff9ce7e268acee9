using System.Globalization;
using System.Text;

namespace DetailGen.Dxf.Tests.Writing;

/// <summary>A written file taken apart again: records of code and value, with no knowledge of the writer.</summary>
internal sealed class TagFile
{
    public TagFile(byte[] bytes)
    {
        var lines = new UTF8Encoding(false, true).GetString(bytes).Split("\r\n");
        for (var i = 0; i + 1 < lines.Length; i += 2)
        {
            var code = int.Parse(lines[i], NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture);
            if (code == 0)
            {
                Records.Add(new(lines[i + 1], []));
            }
            else
            {
                Records[^1].Tags.Add((code, lines[i + 1]));
            }
        }
    }

    public List<TagRecord> Records { get; } = [];

    public IEnumerable<TagRecord> Of(string kind) => Records.Where(record => record.Kind == kind);

    public string Header(string variable)
    {
        var tags = Of("SECTION").First().Tags;
        return tags[tags.IndexOf((9, variable)) + 1].Value;
    }
}

internal sealed record TagRecord(string Kind, List<(int Code, string Value)> Tags)
{
    public string? Handle => Tags.Where(tag => tag.Code == (Kind == "DIMSTYLE" ? 105 : 5)).Select(tag => tag.Value).FirstOrDefault();

    public string First(int code) => Tags.First(tag => tag.Code == code).Value;

    public double Number(int code) => double.Parse(First(code), CultureInfo.InvariantCulture);

    public IEnumerable<string> All(int code) => Tags.Where(tag => tag.Code == code).Select(tag => tag.Value);
}
