using System.Globalization;
using System.Text;
using RackController.Model;

namespace RackController.Testing;

/// <summary>A random site in words, for whoever has to understand what is odd about it.</summary>
public static class SiteWords
{
    /// <summary>Circuits, racks, tiers, loads and sensors, line by line.</summary>
    /// <param name="site">The site.</param>
    public static string Of(Site site)
    {
        var text = new StringBuilder();
        foreach (var circuit in site.Circuits)
        {
            Line($"{circuit.Name}: {circuit.VoltageV} V, {circuit.BreakerA} A");
        }

        foreach (var rack in site.Racks)
        {
            AddRack(site, rack, Line);
        }

        return text.ToString();

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }

    private static void AddRack(Site site, Rack rack, Action<FormattableString> line)
    {
        var (tank, curve, supply, floods) = (rack.Reservoir, rack.Pump.Curve, rack.Supply, rack.Schedule.Floods);
        var loads = site.Loads.Where(load => load.Rack == rack.Id)
            .Select(load => FormattableString.Invariant($"{load.Name} {load.PowerW} W on {site[load.Circuit].Name}"));
        line($"{rack.Name}: {tank.NormalVolumeL} of {tank.CapacityL} L, {tank.DepthMm} mm deep at {tank.FloorHeightMm} mm,");
        line($"  pump from {tank.PumpIntakeMm} mm, {curve.ShutOffHeadM} m, {curve.MaxFlowLpm} L/min, n {curve.Exponent},");
        line($"  riser {supply.BoreMm} x {supply.RunLengthMm} mm, K {supply.RunMinorLossK} and {supply.TeeMinorLossK},");
        line($"  check valve {supply.HasCheckValve}, stack {rack.Drain.CapacityLpm} L/min");
        line($"  {rack.DripTray}, {rack.FloatCutout}, {rack.TimeCutout}");
        line($"  {floods.Times}, {floods.Fill}, soak {floods.Soak}, drain {floods.Drain}, {floods.Missed}");
        line($"  {string.Join("; ", rack.Schedule.Runs)}; lights {rack.Schedule.LightStagger} apart");
        line($"  {rack.Limits}");
        foreach (var tier in rack.Tiers)
        {
            AddTier(tier, rack.Schedule.Lights[tier.Number - 1], line);
        }

        line($"  loads: {string.Join(", ", loads)}");
        line($"  sensors: {string.Join(", ", site.Sensors.Where(sensor => sensor.Rack == rack.Id).Select(sensor => sensor.Name))}");
    }

    private static void AddTier(Tier tier, Photoperiod? light, Action<FormattableString> line)
    {
        var (tray, branch) = (tier.Tray, tier.Branch);
        line($"  tier {tier.Number} at {tier.TrayFloorHeightMm} mm: {tray.LengthMm} x {tray.WidthMm} x {tray.RimDepthMm} mm,");
        line($"    standpipe {tray.StandpipeHeightMm} x {tray.StandpipeBoreMm} mm, weep {tray.WeepBoreMm} mm, {tray.Contents},");
        line($"    branch {branch.BoreMm} x {branch.LengthMm} mm, K {branch.MinorLossK}, outlet {branch.OutletAboveTrayFloorMm} mm,");
        line($"    in use {tier.InUse}, {light}");
    }
}
