using System.Text;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Library.Files;
using DetailGen.Library.Reports;
using DetailGen.Library.Working;

namespace DetailGen.Library.Verbs;

/// <summary>A commented preset for a junction, a wall and a roof.</summary>
internal static class StarterText
{
    internal static TextReport Of(NewRequest request, Office office)
    {
        var errors = new List<ErrorReport>();
        var junction = Find(ComponentKind.Junction, request.Junction, office, errors);
        var wall = Find(ComponentKind.Wall, request.Wall, office, errors);
        var roof = Find(ComponentKind.Roof, request.Roof, office, errors);
        if (errors.Count > 0)
        {
            return new(DetailLibrary.Tool, "", null) { Errors = errors, Status = 2 };
        }

        var name = request.File is null ? $"my-{request.Junction}" : Path.GetFileNameWithoutExtension(request.File);
        var text = Starter.Write(junction!, wall!, roof!, name);
        return request.File is null ? new(DetailLibrary.Tool, text, null) : Write(request.File, text);
    }

    private static TextReport Write(string file, string text)
    {
        if (File.Exists(file))
        {
            return new(DetailLibrary.Tool, "", null) { Errors = [new("file-exists", file, 0, 0, null, null, Messages.FileExists(file), null)], Status = 2 };
        }

        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        OutputFolder.Write(folder, [new(Path.GetFileName(file), "yaml", Encoding.UTF8.GetBytes(text))], out var fault);
        return fault is null
            ? new(DetailLibrary.Tool, text, file)
            : new(DetailLibrary.Tool, "", null) { Errors = [new("cannot-write", file, 0, 0, null, null, fault, null)], Status = 3 };
    }

    private static Component? Find(ComponentKind kind, string id, Office office, List<ErrorReport> errors)
    {
        if (office.Context.Components.Find(kind, id) is { IsGood: true } found)
        {
            return found.Value;
        }

        var names = office.Context.Components.Ids(kind);
        var word = kind.ToString().ToLowerInvariant();
        var hint = Nearest.To(id, names) is { } nearest ? Messages.DidYouMean(nearest) : Messages.OneOf(names);
        errors.Add(new($"unknown-{word}", "", 0, 0, word, id, Messages.NoSuch(word, id), hint));
        return null;
    }
}
