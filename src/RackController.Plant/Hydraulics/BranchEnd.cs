namespace RackController.Plant;

/// <summary>What a branch meets at its far end.</summary>
/// <param name="Open">Whether its tier valve lets water pass.</param>
/// <param name="HeadM">Height it discharges against, m: its outlet, or the tray's surface where that is higher.</param>
/// <param name="BackShare">How freely tray water can enter it: 0 with the outlet in air or behind a check valve, 1 once well
/// covered.</param>
internal readonly record struct BranchEnd(bool Open, double HeadM, double BackShare);
