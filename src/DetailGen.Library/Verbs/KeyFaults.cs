using DetailGen.Details.Presets;
using DetailGen.Details.Reading;
using DetailGen.Library.Reports;

namespace DetailGen.Library.Verbs;

/// <summary>What is wrong with a key that stands on the command line and is none of the values that the solver may choose.</summary>
internal static class KeyFaults
{
    internal static ErrorReport Unknown(string path, Preset preset, string key, IReadOnlyList<string> known) =>
        preset.Components.SelectMany(component => component.Derived).Any(derived => derived.Key == key)
            ? ErrorReport.Of("derived-key", path, Messages.FollowsFromOthers(key), Messages.AskForThose, key: key)
            : ErrorReport.Of("unknown-key", path, Messages.NotInDetail(key), Nearest.To(key, known) is { } nearest ? Messages.DidYouMean(nearest) : Messages.SeeParameters, key: key);
}
