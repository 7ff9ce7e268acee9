using System.Text.Json.Serialization;

namespace DetailGen.Library.Reports;

/// <summary>What is known of the build-ups, and the heat through the junction in two dimensions. Every proven value lies between its two bounds; the error of discretisation is no larger than they are apart.</summary>
/// <param name="Standard">What it follows.</param>
/// <param name="Film">The film of <c>junction.frsi</c>: mould or heat-flow.</param>
public sealed record JunctionReport(
    IReadOnlyList<BuildupReport> Buildups,
    [property: JsonPropertyName("l2d_w_mk")] double Coupling,
    [property: JsonPropertyName("error_estimate_w_mk")] double Error,
    [property: JsonPropertyName("l2d_bounds_w_mk")] IReadOnlyList<double> Bounds,
    [property: JsonPropertyName("heat_flow_w_m")] double HeatFlow,
    [property: JsonPropertyName("flows_w_m")] SortedDictionary<string, double> Flows,
    [property: JsonPropertyName("heat_balance")] double HeatBalance,
    [property: JsonPropertyName("psi_internal_w_mk")] double PsiInternal,
    [property: JsonPropertyName("psi_internal_bounds_w_mk")] IReadOnlyList<double> PsiInternalBounds,
    [property: JsonPropertyName("psi_external_w_mk")] double PsiExternal,
    [property: JsonPropertyName("psi_external_bounds_w_mk")] IReadOnlyList<double> PsiExternalBounds,
    [property: JsonPropertyName("flanking")] IReadOnlyList<FlankReport> Flanking,
    IReadOnlyList<PairReport> Pairs,
    [property: JsonPropertyName("f_rsi")] FactorReport Factor,
    [property: JsonPropertyName("f_rsi_humidity")] FactorReport MouldFactor,
    [property: JsonPropertyName("theta_si_min_c")] double Coldest,
    [property: JsonPropertyName("subdivision")] SubdivisionReport? Subdivision,
    [property: JsonPropertyName("unknowns")] int Unknowns,
    string Film,
    string Standard,
    IReadOnlyList<EnvironmentReport> Environments,
    IReadOnlyList<SurfaceReport> Surfaces,
    IReadOnlyList<ConductivityReport> Conductivities,
    IReadOnlyList<string> Steps,
    string Caution) : PhysicsReport(Buildups);

/// <summary>A plane element beside the junction, as the thermal model has it; fixings are not corrected for.</summary>
public sealed record FlankReport(
    string Name,
    [property: JsonPropertyName("u_w_m2k")] double UValue,
    [property: JsonPropertyName("u_bounds_w_m2k")] IReadOnlyList<double> Bounds,
    [property: JsonPropertyName("length_internal_mm")] double Internal,
    [property: JsonPropertyName("length_external_mm")] double External);

/// <summary>What two of the airs beside the junction exchange: L2D of the pair, and Ψ after the plane elements that part them. Their flow is L2D times the difference of their temperatures.</summary>
/// <param name="Flank">The plane element that parts the two; null where wall and roof both do.</param>
public sealed record PairReport(
    IReadOnlyList<string> Between,
    [property: JsonPropertyName("l2d_w_mk")] double Coupling,
    [property: JsonPropertyName("l2d_bounds_w_mk")] IReadOnlyList<double> Bounds,
    [property: JsonPropertyName("psi_internal_w_mk")] double PsiInternal,
    [property: JsonPropertyName("psi_internal_bounds_w_mk")] IReadOnlyList<double> PsiInternalBounds,
    [property: JsonPropertyName("psi_external_w_mk")] double PsiExternal,
    [property: JsonPropertyName("psi_external_bounds_w_mk")] IReadOnlyList<double> PsiExternalBounds,
    FlankReport? Flank);

/// <summary>A temperature factor and where it is.</summary>
/// <param name="Change">By how much the last refinement changed it: an indication, no bound; null where it was found on one mesh only.</param>
/// <param name="Proven">False: the value is an estimate, as long as no bound of it is proven.</param>
public sealed record FactorReport(double Value, [property: JsonPropertyName("x_mm")] double X, [property: JsonPropertyName("y_mm")] double Y, double? Change, bool Proven);

/// <summary>Change of the sum of heat flows between two meshes, the finer with at least twice as many triangles, as a share.</summary>
/// <param name="Proven">The finer mesh was not made: the bounds prove that none changes the sum by more.</param>
public sealed record SubdivisionReport(IReadOnlyList<int> Triangles, double Change, double Limit, bool Met, bool Proven, string Standard);

/// <summary>Air beside the junction.</summary>
public sealed record EnvironmentReport(string Name, string Side, [property: JsonPropertyName("t_c")] double Temperature);

/// <summary>The surfaces to one air with one film.</summary>
/// <param name="Flow">Which way heat goes through the film.</param>
/// <param name="Heat">Into the solid through all of them, W/m.</param>
public sealed record SurfaceReport(
    string Environment, string Flow, [property: JsonPropertyName("rs_m2k_w")] double Resistance, [property: JsonPropertyName("heat_w_m")] double Heat);

/// <summary>A conductivity that is used.</summary>
/// <param name="Own">Of the material; null for air. Differs where members share with what lies between them.</param>
/// <param name="Origin">declared, tabulated or assumed.</param>
/// <param name="Confidence">read, memory or common-practice.</param>
public sealed record ConductivityReport(
    string Material, IReadOnlyList<string> Parts, [property: JsonPropertyName("lambda_w_mk")] double Conductivity,
    [property: JsonPropertyName("own_lambda_w_mk")] double? Own, string Origin, string Confidence);
