using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using RackController.Model;

namespace RackController.Control.Tests.Exploring;

/// <summary>Copies an interlock with everything that it may change, so that a walk can take two turnings from one state. What never
/// changes (rows, racks, limits, words) is shared.</summary>
internal static class Twin
{
    private static readonly Dictionary<Type, FieldInfo[]> fieldsOf = [];

    /// <summary>Another one in the same state.</summary>
    public static T Of<T>(T original)
        where T : class => (T)Copy(original, new Dictionary<object, object>(ReferenceEqualityComparer.Instance))!;

    /// <summary>The fields of a type and of those that it derives from.</summary>
    public static FieldInfo[] FieldsOf(Type type)
    {
        ref var fields = ref CollectionsMarshal.GetValueRefOrAddDefault(fieldsOf, type, out _);
        return fields ??= [.. Find(type)];
    }

    /// <summary>Whether things of a type never change: those of Model and of libraries, rows of the table and limits.</summary>
    public static bool NeverChanges(Type type) =>
        type.IsPrimitive || type.IsEnum || typeof(Delegate).IsAssignableFrom(type)
        || type == typeof(CauseAndEffectRow) || type == typeof(InterlockSite) || type == typeof(Limit) || type == typeof(FloatPair)
        || type == typeof(Place)
        || (!type.IsArray && !type.IsGenericType && type.Assembly != typeof(Interlock).Assembly)
        || (type.IsGenericType && type.Assembly != typeof(Interlock).Assembly && type.GetGenericArguments().All(NeverChanges));

    private static IEnumerable<FieldInfo> Find(Type type)
    {
        const BindingFlags Own = BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly;
        for (var each = type; each is not null && each != typeof(object); each = each.BaseType)
        {
            foreach (var field in each.GetFields(Own))
            {
                yield return field;
            }
        }
    }

    private static object? Copy(object? original, Dictionary<object, object> copies)
    {
        if (original is null || NeverChanges(original.GetType()))
        {
            return original;
        }

        if (copies.TryGetValue(original, out var known))
        {
            return known;
        }

        var type = original.GetType();
        if (original is Array array)
        {
            var copied = (Array)array.Clone();
            copies[original] = copied;
            for (var i = 0; i < copied.Length && !NeverChanges(type.GetElementType()!); i++)
            {
                copied.SetValue(Copy(copied.GetValue(i), copies), i);
            }

            return copied;
        }

        Invariant.Holds(!type.IsGenericType || type.IsValueType, $"a walk can copy no {type.Name}");
        var copy = RuntimeHelpers.GetUninitializedObject(type);
        if (!type.IsValueType)
        {
            copies[original] = copy;
        }

        foreach (var field in FieldsOf(type))
        {
            field.SetValue(copy, Copy(field.GetValue(original), copies));
        }

        return copy;
    }
}
