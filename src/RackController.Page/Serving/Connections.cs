using System.Net;
using Microsoft.AspNetCore.Connections;

namespace RackController.Page;

/// <summary>Keeps connections within what a small board has room for. There is always room for one more, so that a stop gets through: it
/// is made at the cost of whoever holds the most.</summary>
internal sealed class Connections
{
    /// <summary>How many there are at most.</summary>
    public const int MostInAll = 256;

    /// <summary>How many one address has at most.</summary>
    public const int MostOfOneAddress = 48;

    private readonly Lock gate = new();
    private readonly Dictionary<IPAddress, LinkedList<ConnectionContext>> open = [];
    private int all;

    /// <summary>Counts every connection.</summary>
    public ConnectionDelegate Before(ConnectionDelegate next) => async connection =>
    {
        var address = AddressWords.Counted((connection.RemoteEndPoint as IPEndPoint)?.Address);
        var place = Enter(address, connection, out var goes);
        goes?.Abort(new ConnectionAbortedException("another connection takes its place"));
        try
        {
            await next(connection).ConfigureAwait(false);
        }
        finally
        {
            Leave(address, place);
        }
    };

    private LinkedListNode<ConnectionContext> Enter(IPAddress address, ConnectionContext connection, out ConnectionContext? goes)
    {
        lock (gate)
        {
            if (!open.TryGetValue(address, out var own))
            {
                open[address] = own = [];
            }

            var crowd = own.Count >= MostOfOneAddress ? own : all >= MostInAll ? open.Values.MaxBy(list => list.Count) : null;
            goes = crowd?.First?.Value;
            if (goes is not null)
            {
                // Counted off at once, so that the next one takes another, however long this one takes to go.
                crowd!.RemoveFirst();
                all--;
            }

            all++;
            return own.AddLast(connection);
        }
    }

    private void Leave(IPAddress address, LinkedListNode<ConnectionContext> place)
    {
        lock (gate)
        {
            if (place.List is { } own)
            {
                own.Remove(place);
                all--;
            }

            if (open.TryGetValue(address, out var left) && left.Count == 0)
            {
                open.Remove(address);
            }
        }
    }
}
