using NodaTime;

namespace RackController.Growing.Tests;

/// <summary>A crop of round numbers, which no real crop has to be like.</summary>
internal static class SomeCrop
{
    public static LitStage Stage(double leastMol, double mostMol) => new()
    {
        Name = "light",
        Days = new WholeBounds(4, 6),
        DailyLightMolPerM2D = new Bounds(leastMol, mostMol),
        PpfdUmolPerM2S = new Bounds(100, 300),
        PhotoperiodH = new Bounds(12, 18),
        Floods = [new MediaFloods(null, new WholeBounds(1, 2)), new MediaFloods("hemp mat", new WholeBounds(2, 4))],
    };

    public static Crop Soaked(int soakH) => new()
    {
        Name = "pea",
        Kind = CropKind.Microgreen,
        Soak = Duration.FromHours(soakH),
        DarkDays = new WholeBounds(2, 3),
        LitStages = [Stage(8, 12)],
        SeedGPerTray = 250,
        YieldGPerTray = 100,
        KeepsDays = 2,
        AirC = new Bounds(16, 22),
    };

    public static Batch Batch(Crop crop, LocalDate due) =>
        new() { Crop = crop, Trays = 2, Due = due, IsLive = false, Orders = [] };
}
