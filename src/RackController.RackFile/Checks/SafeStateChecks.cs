using RackController.Model;
using RackController.RackFile.Binding;
using RackController.RackFile.Mappings;

namespace RackController.RackFile.Checks;

/// <summary>What a load gets from a dead controller is its safe state, and water is safe only when it stands still.</summary>
internal static class SafeStateChecks
{
    public static void Run(RackPart rack, Complaints complaints)
    {
        foreach (var load in rack.Loads)
        {
            Check(load, complaints);
        }
    }

    private static void Check(LoadPart load, Complaints complaints)
    {
        var name = load.ShortName;
        if (load.Kind is LoadKind.Pump or LoadKind.Valve && load.SafeState == SwitchState.On)
        {
            complaints.Refuse(
                load.Place, $"the safe state of {name} is on, so water would run while nobody can judge",
                "remove `safe-state`; off is its default");
        }
        else if (load.Kind == LoadKind.Light && load.SafeState == SwitchState.On)
        {
            complaints.Warn(
                load.Place, $"the safe state of {name} is on, so it would heat while nobody can judge",
                "remove `safe-state`; off is its default");
        }

        if (load.Contact == RelayContact.NormallyClosed && load.SafeState == SwitchState.Off)
        {
            complaints.Refuse(
                load.ContactPlace, $"{name} is on a normally-closed contact, so it would run whenever the controller is dead",
                "wire it to the normally-open contact and remove `contact`");
        }
        else if (load.Contact == RelayContact.NormallyOpen && load.SafeState == SwitchState.On)
        {
            complaints.Warn(
                load.ContactPlace, $"{name} is on a normally-open contact, so it would stop whenever the controller is dead",
                "wire it to the normally-closed contact and remove `contact`, or write `safe-state: off`");
        }
    }
}
