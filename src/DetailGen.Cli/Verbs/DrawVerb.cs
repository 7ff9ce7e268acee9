using System.CommandLine;
using DetailGen.Cli.Terminal;
using DetailGen.Library;

namespace DetailGen.Cli.Verbs;

/// <summary>The main job: from presets to issued sheets.</summary>
internal static class DrawVerb
{
    private const string Example = "detailgen draw presets/details/tern-court-parapet-01.yaml --set wall.cavity=150mm --out sheets";

    internal static Command Command(Screen screen)
    {
        var presets = Arguments.Presets("Preset files (YAML).");
        var set = Arguments.Set();
        var folder = new Option<string>("--out") { Description = "Folder for the files; made if it is not there.", HelpName = "DIR", DefaultValueFactory = _ => "." };
        var formats = new Option<string>("--formats")
        {
            Description = $"What to write, with commas between: {string.Join(", ", DrawRequest.AllFormats)}.",
            HelpName = "LIST",
            DefaultValueFactory = _ => string.Join(',', DrawRequest.DefaultFormats),
        };
        var viewOnly = new Option<bool>("--view-only") { Description = "The view without a sheet, to stand in your own drawing; its origin is where the weather face meets finished roof level." };
        var audit = new Option<bool>("--layout-audit") { Description = "Measure the finished sheets too: a picture NAME-audit.png rings and lists every fault of layout, and JSON lists them." };
        var dpi = Arguments.WholeNumber("--dpi", "Resolution of PNG files, 50 to 600.", 50, 600, usual: 300);
        var earlier = new Option<string[]>("--earlier") { Description = "JSON report of an earlier issue: notes stay where they stood in it, as far as they can; may be repeated.", HelpName = "FILE", DefaultValueFactory = _ => [] };
        var physics = Arguments.Physics();
        var verb = Arguments.Verb("draw", "Solve presets, draw the sheets and write the files.", Example);
        verb.Arguments.Add(presets);
        verb.Options.Add(set);
        verb.Options.Add(folder);
        verb.Options.Add(formats);
        verb.Options.Add(viewOnly);
        verb.Options.Add(audit);
        verb.Options.Add(dpi);
        verb.Options.Add(earlier);
        verb.Options.Add(physics);
        verb.Validators.Add(parsed =>
        {
            if (parsed.Written(folder) is { Length: 0 })
            {
                parsed.AddError("--out names no folder.");
            }
        });
        verb.SetAction(parsed =>
        {
            var asked = parsed.GetValue(formats)!.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            var unknown = asked.Where(format => !DrawRequest.AllFormats.Contains(format, StringComparer.Ordinal)).ToList();
            if (unknown.Count > 0 || asked.Length == 0)
            {
                return Answers.Refuse(screen, parsed.GetValue(CommandLine.Json), "unknown-format",
                    asked.Length == 0 ? "--formats names no format." : $"There is no format {unknown[0]}.", $"The formats are {string.Join(", ", DrawRequest.AllFormats)}.");
            }

            var report = DetailLibrary.Draw(new(
                parsed.GetValue(presets)!, parsed.GetValue(set)!, parsed.GetValue(folder)!, asked, parsed.GetValue(viewOnly), parsed.GetValue(dpi),
                parsed.GetValue(Arguments.Practice))
            {
                LayoutAudit = parsed.GetValue(audit),
                Earlier = parsed.GetValue(earlier)!,
                Physics = parsed.GetValue(physics),
            });
            return Answers.Tell(screen, report, parsed.GetValue(CommandLine.Json), DetailsText.Drawn);
        });
        return verb;
    }
}
