using DetailGen.Physics.Cases;

namespace DetailGen.Physics;

/// <summary>What is said about the form of a case file.</summary>
internal static partial class Messages
{
    internal static Complaint NotJson(string said) => new($"This is not JSON: {said}", "A case file is one JSON object.");

    internal static Complaint EmptyFile() => new("The file is empty.", "A case file is one JSON object, such as presets/cases/tern-court-cases.json.");

    internal static Complaint TooLong(long most) => new($"The file has more than {most} bytes, the most that are read of a case file.", "Put its cases into several files.");

    internal static Complaint KeyTwice(string key) => new($"The key {key} stands twice.", "Leave one of them.");

    internal static Complaint NotAnObject() => new("A case file is one JSON object: a case, or an object with cases.", "Start with {.");

    internal static Complaint UnknownFormat(string given) => new($"The format is {given}; this tool reads format 1.", "Write 1, or leave the key out.");

    internal static Complaint UnknownKey(string key, string path, string nearest) => new(
        path.Length == 0 ? $"A case has no key {key}." : $"There is no key {key} in {path}.", $"The nearest is {nearest}.");

    internal static Complaint Missing(string key, string path) => new(path.Length == 0 ? $"{key} is missing." : $"{key} is missing in {path}.", $"Give {key}.");

    internal static Complaint NotA(string kind, string path, string given) => new(
        $"{path} is {given}; it must be {(kind is "text" or "true or false" ? "" : kind is "object" ? "an " : "a ")}{kind}.",
        kind switch
        {
            "number" => "Write a number alone, with a decimal point and without unit or quotation marks.",
            "text" => "Put it in quotation marks.",
            "object" => "Write it in braces: { \"key\": value }.",
            "list" => "Write it in brackets: [first, second].",
            _ => "Write true or false, without quotation marks.",
        });

    internal static Complaint NotFinite(string path, string given) => new($"{path} is {given}, which is too large for a number.", "Look at the exponent and at the unit in the name of the key.");

    internal static Complaint OutOfBounds(string path, string given, string wording) => new($"{path} is {given}; it must be {wording}.", "Look at the sign, at the decimal point and at the unit in the name of the key.");

    internal static Complaint EmptyList(string path) => new($"{path} is empty.", "Give one at least.");

    internal static Complaint UnknownName(string path, string given, IReadOnlyCollection<string> names) => new(
        $"{path} is {given}, which there is not.",
        names.Count == 0 ? "There are none to choose from." : names.Count <= 5 ? $"It can be {string.Join(", ", names)}." : $"The nearest is {Nearest.Of(given, names)}.");

    internal static Complaint BadId(string id) => new($"The id {id} may hold only a-z, 0-9 and hyphens.", "Write it like wall-corner.");

    internal static Complaint IdTwice(string id) => new($"The id {id} stands twice in the file.", "Give each case an id of its own.");

    internal static Complaint NoMatchingCase(IEnumerable<string> kinds) => new($"The file has no case of kind {string.Join(" or ", kinds)}.", "Look at kind; detailgen heat answers u-value and heat2d, detailgen moisture answers moisture.");

    internal static Complaint OtherVerb(string id, string verb) => new($"Case {id} is one of {verb}.", $"Ask detailgen {verb} --case for it.");

    internal static Complaint NoSuchCase(string id, IReadOnlyCollection<string> ids) => new(
        $"There is no case {id} of a kind that is calculated here.", ids.Count == 0 ? "The file has none of such a kind." : $"The nearest is {Nearest.Of(id, ids)}.");

    internal static Complaint ReservedName(string name) => new($"{name} is a reserved name.", "Call the environment otherwise.");

    internal static Complaint EitherOr(string path, string first, string second, bool both) => new(
        both ? $"{path} has both {first} and {second}; it can have one." : $"{path} has neither {first} nor {second}.", both ? $"Leave out {first} or {second}." : $"Give {first} or {second}.");

    internal static Complaint Coordinates(string path, int count, string wanted) => new($"{path} has {count} numbers; it needs {wanted}.", "Count them, and look for a missing comma or bracket.");

    internal static Complaint EmptyRectangle(string path) => new($"{path} is empty or turned round.", "Write [x0, y0, x1, y1] with x0 below x1 and y0 below y1.");

    internal static Complaint TooFewPoints(string path, int count, int least) => new($"{path} has {count} points; it needs {least} or more.", "Write each point as [x, y], in their order along the line.");

    internal static Complaint TooMany(string what, int count, int most) => new($"The case has {count} {what}; it can have at most {most}.", "Leave out what does not bear on the heat flow, or make several cases.");

    internal static Complaint FilmOnAdiabatic(string path) => new($"{path} has rs_m2k_w, but no heat passes an adiabatic line.", "Leave out rs_m2k_w or name an environment.");

    internal static Complaint NoEnvironmentUsed() => new("No boundary line names an environment; all are adiabatic.", "Give at least two environments of unlike temperature.");

    internal static Complaint OneTemperature(string temperature) => new(
        $"All environments that are used have one temperature ({temperature} °C), so no heat flows.", "Give them unlike temperatures.");

    internal static Complaint NoForm(string path) => new(
        $"Layer {path} has no form.", "Give d_mm with lambda_w_mk or material, or r_m2k_w, or d_mm with air, or parts, or tapered.");

    internal static Complaint TwoForms(string path, IEnumerable<string> forms) => new($"Layer {path} has {string.Join(" and ", forms)}; it can have one form.", "Leave out all but one.");

    internal static Complaint OnlyPlainOrGiven(string path, string form) => new(
        $"Layer {path} has {form}; a moisture calculation takes plain layers and given resistances only.", "Give its resistance as r_m2k_w.");

    internal static Complaint NoName(string path) => new($"Layer {path} has neither a name nor a material.", "Give it a name.");

    internal static Complaint FractionsDoNotSum(string path, string sum) => new($"The fractions of {path} sum to {sum}; each fraction is a share of the whole area.", "Let them sum to 1.");

    internal static Complaint NoVapourFigure(string name, string path) => new(
        $"Layer {name} ({path}) has no figure for vapour, neither mu nor sd_m.", "Give mu (with d_mm) or sd_m.");

    internal static Complaint MuWithoutThickness(string name, string path) => new($"Layer {name} ({path}) has mu but no d_mm, so its sd is unknown.", "Give d_mm, or sd_m in place of mu.");

    internal static Complaint AllVapourPasses() => new("The layers have no resistance to vapour at all (their sd sums to 0).", "Give at least one layer with mu or sd_m above 0.");

    internal static Complaint NoThermalResistance() => new("Layers and films have no thermal resistance at all.", "Give rsi_m2k_w, rse_m2k_w or a layer a resistance.");

    internal static Complaint MonthCount(string path, int count) => new($"{path} has {count} numbers; it needs 1 or 12, January first.", "Write one number for the whole year, or one for each month.");

    internal static Complaint NoSuchInterface(string path, string given, int layers) => new(
        $"{path} is {given}; water lies between layers, after layer 1 to {layers - 1} from inside.", layers < 2 ? "Give at least two layers." : "Count the layers from inside, the first is 1.");

    internal static Complaint InterfaceAtSurface(string path) => new(
        $"{path} is at a surface: nothing with resistance to vapour lies between it and the air.", "Name an interface with resistance to vapour on both sides.");

    internal static Complaint NoCheck(string path) => new($"{path} has nothing to compare with.", "Give value, or equals_null.");

    internal static Complaint UnreadablePath(string path, string given) => new(
        $"{path} is {given}, which is no path into an answer.", "Start with id, kind, title, result, points or warnings, and put dots between keys.");

    internal static Complaint GroupWithoutParts(string path) => new($"Layer {path} has a group but no parts; only bridged layers stand in groups.", "Leave out group.");

    internal static Complaint TooManyStrips(double strips, int most) => new(
        $"The layers would be cut into {Number(strips)} strips; {most} is the most.", "Give a larger max_strip_r_m2k_w.");

    internal static string CheckFails(System.Text.Json.Nodes.JsonObject entry) => $"{entry["path"]} is {entry["got"]?.ToJsonString() ?? "not there"}, expected {entry["value"]?.ToJsonString() ?? "nothing"}.";

    internal static string PressureAboveSaturation(IReadOnlyList<string> months) => $"In {Months(months)} the air inside would hold more vapour than saturates it; check vapour excess and temperature.";

    internal static string SurfaceCannotMeet(string month) =>
        $"In {month} the surface would have to be warmer than the air inside: no build-up meets the allowed humidity there; the air must be drier or warmer.";

    internal static string SurfaceDew(IReadOnlyList<string> months) => $"In {Months(months)} the inside surface is at or below the dew point of the air inside, so water condenses on it; this calculation leaves that out.";

    private static string Months(IReadOnlyList<string> months) => months.Count == 12 ? "every month"
        : months.Count == 1 ? months[0] : $"{string.Join(", ", months.Take(months.Count - 1))} and {months[^1]}";

    internal static string StartsAmidWet() => "The start month lies within the time of condensation; what is left after twelve months is not a year's balance.";

    internal static string LeftOut(string name) => $"{name} lies in or beyond a well ventilated air layer and is left out.";

    internal static string CorrectionsSmall() => "The corrections sum to less than 3 % of U and are left out.";

    internal static string Boundless(string path) => $"The figures of this case are beyond what numbers can hold: {path} is not finite.";

    internal static string BoundlessHint => "Look for sizes, conductivities or temperatures that nothing built can have.";
}
