namespace RackController.Conventions.Architecture;

/// <summary>One project of the house: which rooms it may look into and which packages it may use in its own code.</summary>
internal sealed record Room(string Name, string[] Sees, string[] Packages)
{
    /// <summary>
    /// The house. Control and Plant never see each other, so the same Control runs on the bench and on the board; the Bench sees
    /// neither Hardware nor Service, so nothing it proves can depend on a board.
    /// </summary>
    public static readonly Room[] All =
    [
        new("Model", [], ["NodaTime"]),
        new("RackFile", ["Model"], ["NodaTime", "UnitsNet", "YamlDotNet"]),
        new("Control", ["Model"], ["NodaTime"]),
        new("Plant", ["Model"], ["NodaTime"]),
        new("Growing", ["Model"], ["NodaTime"]),
        new("PlanFiles", ["Model", "RackFile", "Growing"], ["NodaTime"]),
        new("Planning", ["Model", "Growing"], ["Google.OrTools", "Google.Protobuf", "NodaTime"]),
        new("Hardware", ["Model"], ["Iot.Device.Bindings", "NodaTime", "System.Device.Gpio", "UnitsNet"]),
        new("Bench", ["Model", "RackFile", "Control", "Plant", "Growing"], ["MathNet.Numerics", "NodaTime", "UnitsNet", "YamlDotNet"]),
        new("Service", ["Model", "RackFile", "Control", "Plant", "Growing", "Hardware"], ["NodaTime", "Microsoft.Data.Sqlite",
            "Microsoft.Extensions.*", "Serilog", "Serilog.*", "SQLitePCLRaw.*"]),
        new("Notices", ["Model", "RackFile", "Control", "Service"], ["MailKit", "MimeKit", "NodaTime"]),
        new("Page", ["Model", "RackFile", "Control", "Growing", "PlanFiles", "Bench", "Service"], ["DiffPlex", "Microsoft.AspNetCore",
            "Microsoft.AspNetCore.*", "Microsoft.Extensions.*", "NodaTime", "RazorSlices",
            "System.IO.Hashing"]),
        new("", ["Model", "RackFile", "Control", "Plant", "Growing", "PlanFiles", "Planning", "Bench", "Service", "Notices", "Page"],
            ["NodaTime", "Spectre.Console", "Spectre.Console.*", "System.CommandLine"]),
    ];

    public string Assembly => Name.Length == 0 ? "RackController" : $"RackController.{Name}";

    public override string ToString() => Assembly;

    /// <summary>Whether this room's code may use an assembly that is neither ours nor part of .NET itself.</summary>
    public bool MayUse(string assembly) => Packages.Any(package => package.EndsWith('*')
        ? assembly.StartsWith(package[..^1], StringComparison.Ordinal)
        : assembly == package);
}
