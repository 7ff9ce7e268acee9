using System.Globalization;
using System.Text;
using DetailGen.Details.Parameters;
using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Details.Solving;
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
            return TextReport.Refused(errors);
        }

        if (request.File is { Length: 0 })
        {
            return TextReport.Refused(ErrorReport.Of("no-file", "", Messages.NoFileNamed, Messages.NoFileNamedHint));
        }

        if (request.File is { } folder && (Directory.Exists(folder) || Path.EndsInDirectorySeparator(folder)))
        {
            return TextReport.Refused(ErrorReport.Of("folder", folder, Messages.IsFolderItself(folder), Messages.NameAFile));
        }

        var name = Id(request.File) is { Length: > 0 } own ? own : $"my-{request.Junction}";
        var bare = PresetReader.ReadText(Starter.Write(junction!, wall!, roof!, name), request.File ?? name, [], office.Context);
        if (!bare.IsGood)
        {
            return TextReport.Refused(SolvedReporting.Errors(bare.Faults));
        }

        var text = Starter.Write(junction!, wall!, roof!, name, Taken(bare.Value, office));
        return request.File is null ? new(DetailLibrary.Tool, text, null) : Write(request.File, text);
    }

    // what is reached stands as the target, so that each target can be asked for as it stands
    private static Dictionary<string, string>? Taken(Preset preset, Office office)
    {
        if (DetailSolver.Solve(preset, office.Catalogue) is not Solution.Solved solved)
        {
            return null;
        }

        var taken = TakenValues.Of(solved, office.Catalogue);
        var found = Targets.AtAGlance(solved);
        foreach (var target in PresetShape.Targets.Where(target => target.IsSimulated))
        {
            // a closer look may find a hundredth less
            var hundredths = target.AtLeast ? decimal.Floor(found.Of(target.Key) * 100) - 1 : decimal.Ceiling(found.Of(target.Key) * 100) + 1;
            taken["target." + target.Key] = (hundredths / 100).ToString("0.00", CultureInfo.InvariantCulture);
        }

        return taken;
    }

    // a file may be called what an id cannot
    private static string Id(string? file) =>
        string.Concat(Path.GetFileNameWithoutExtension(file ?? "").Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '_' ? letter : '-').Take(60)).Trim('-', '.', '_');

    private static TextReport Write(string file, string text)
    {
        if (File.Exists(file))
        {
            return TextReport.Refused(ErrorReport.Of("file-exists", file, Messages.FileExists(file), Messages.FileExistsHint));
        }

        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        OutputFolder.Write(folder, [new(Path.GetFileName(file), "yaml", Encoding.UTF8.GetBytes(text))], out var fault);
        return fault is null
            ? new(DetailLibrary.Tool, text, file)
            : TextReport.Refused(ErrorReport.Of("cannot-write", file, fault.Reason, fault.Hint)) with { Status = ExitStatus.NotWritten };
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
        errors.Add(new($"unknown-{word}", "", null, null, word, id, Messages.NoSuch(word, id), hint));
        return null;
    }
}
