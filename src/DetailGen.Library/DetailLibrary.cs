using DetailGen.Library.Reports;
using DetailGen.Library.Verbs;
using DetailGen.Library.Working;
using DetailGen.Physics.Cases;

namespace DetailGen.Library;

/// <summary>The verbs, each one call that runs the whole pipeline and answers with a report.</summary>
public static class DetailLibrary
{
    /// <summary>What <see cref="List"/> knows.</summary>
    public static IReadOnlyList<string> Topics => Listing.Topics;

    /// <summary>What <see cref="Schema"/> knows.</summary>
    public static IReadOnlyList<string> SchemaKinds => SchemaText.Kinds;

    /// <summary>The name that somebody meant; null where none is near.</summary>
    public static string? Nearest(string written, IReadOnlyList<string> names) => Details.Reading.Nearest.To(written, names);

    /// <summary>How a fault of our own is told: kind and message, never a stack trace.</summary>
    public static ErrorReport InternalFault(Exception fault) => InternalFaults.Of(fault, "");

    internal static ToolReport Tool { get; } = new("DetailGen", typeof(DetailLibrary).Assembly.GetName().Version!.ToString(3));

    /// <summary>Draws presets. The files of a detail stand under their final names only if all of them could be written.</summary>
    public static DetailsReport Draw(DrawRequest request)
    {
        _ = Rehearsal.Begin();
        return InOffice(request.Practice, office => PresetDrawing.Run(request, office));
    }

    /// <summary>Judges every rule and check without drawing.</summary>
    public static DetailsReport Check(PresetsRequest request) => InOffice(request.Practice, office => PresetChecking.Run(request, office));

    /// <summary>Says why a value is what it is, what a rule is for, what a part does.</summary>
    public static ExplainReport Explain(ExplainRequest request) =>
        InOffice(request.Practice, office => Explaining.Run(request, office), errors => Explaining.Empty(request, "") with { Errors = errors, Status = ExitStatus.WrongInput });

    /// <summary>What each value can be while the rest stands, and what stops it at either end.</summary>
    public static RangeReport Range(RangeRequest request) =>
        InOffice(request.Practice, office => Ranging.Run(request, office), errors => Ranging.Empty(request, "") with { Errors = errors, Status = ExitStatus.WrongInput });

    /// <summary>Reads a drawing back: the values that it was made from, and what was edited since.</summary>
    public static InspectReport Inspect(string file) => Inspecting.Run(file);

    /// <summary>Heat through the junctions of presets in two dimensions: coupling, Ψ, temperature factor.</summary>
    public static DetailsReport Heat(PresetsRequest request) =>
        InOffice(request.Practice, office => PresetFiles.Each(request, office, preset => DetailWork.Do(preset, office, Simulation.Always).Report));

    /// <summary>Heat through a junction against one size.</summary>
    public static SweepReport Sweep(SweepRequest request) =>
        InOffice(request.Practice, office => Sweeping.Run(request, office), errors => Sweeping.Empty(request, "") with { Errors = errors, Status = ExitStatus.WrongInput });

    /// <summary>The temperatures along the surfaces of a junction.</summary>
    public static SurfacesReport Surfaces(SurfacesRequest request) =>
        InOffice(request.Practice, office => SurfaceReading.Run(request, office), errors => SurfaceReading.Empty(request, "") with { Errors = errors, Status = ExitStatus.WrongInput });

    /// <summary>Answers the cases of a file that ask for U-values and heat flow.</summary>
    public static CaseReport Heat(CaseRequest request) => CaseAnswering.Run(request, CaseMatter.Heat);

    /// <summary>Answers the cases of a file that ask for condensation and mould.</summary>
    public static CaseReport Moisture(CaseRequest request) => CaseAnswering.Run(request, CaseMatter.Moisture);

    /// <summary>Condensation month by month in wall and roof, and what mould asks of their inside faces.</summary>
    public static DetailsReport Moisture(PresetsRequest request) => InOffice(request.Practice, office => MoistureChecking.Run(request, office));

    /// <summary>Lists what there is.</summary>
    public static ListReport List(string topic, string? practice = null) =>
        InOffice(practice, office => Listing.Of(topic, office), errors => new(topic, [], []) { Errors = errors, Status = ExitStatus.WrongInput });

    /// <summary>The JSON schema of a kind of file.</summary>
    public static TextReport Schema(string kind, string? practice = null) => InOffice(practice, office => SchemaText.Of(kind, office), errors => TextReport.Refused(errors));

    /// <summary>A commented preset to start from.</summary>
    public static TextReport New(NewRequest request) => InOffice(request.Practice, office => StarterText.Of(request, office), errors => TextReport.Refused(errors));

    internal static DetailReport Unread(string path, IReadOnlyList<ErrorReport> errors) => new("", path, Solved: false) { Errors = errors, Status = ExitStatus.WrongInput };

    private static DetailsReport InOffice(string? practice, Func<Office, DetailsReport> work) =>
        InOffice(practice, work, errors => new(Tool, [Unread(practice ?? "", errors)]));

    /// <summary>Works with the data of a practice, or refuses where they are faulty.</summary>
    private static T InOffice<T>(string? practice, Func<Office, T> work, Func<IReadOnlyList<ErrorReport>, T> refused)
    {
        var office = Office.Of(practice);
        return office.IsGood ? work(office.Value) : refused(SolvedReporting.Errors(office.Faults));
    }
}
