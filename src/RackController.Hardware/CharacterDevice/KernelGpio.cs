using System.Runtime.InteropServices;

namespace RackController.Hardware.CharacterDevice;

/// <summary>
/// The kernel's GPIO character device, version 2 of its interface: the structures and numbers of
/// <c>include/uapi/linux/gpio.h</c> (Linux 5.10 and later) that the driver needs, under plainer names.
/// </summary>
internal static class KernelGpio
{
    // Each code is direction << 30 | size of the structure << 16 | 0xB4 << 8 | number, as asm-generic/ioctl.h defines
    // _IOR and _IOWR; a test recomputes them from the structures below.
    internal const uint GetChipInfo = 0x8044B401;
    internal const uint GetLineInfo = 0xC100B405;
    internal const uint GetLine = 0xC250B407;
    internal const uint SetLineConfig = 0xC110B40D;
    internal const uint GetLineValues = 0xC010B40E;
    internal const uint SetLineValues = 0xC010B40F;

    internal const uint OutputValuesAttribute = 2;
    internal const int NameLength = 32;
    internal const int MaxAttributes = 10;
}

/// <summary><c>GPIO_V2_LINE_FLAG_*</c>.</summary>
[Flags]
internal enum LineFlags : ulong
{
    None = 0,
    Used = 1 << 0,
    Input = 1 << 2,
    Output = 1 << 3,
    EdgeRising = 1 << 4,
    EdgeFalling = 1 << 5,
    BiasPullUp = 1 << 8,
    BiasPullDown = 1 << 9,
}

/// <summary><c>struct gpiochip_info</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct ChipInfo
{
    internal fixed byte Name[KernelGpio.NameLength];
    internal fixed byte Label[KernelGpio.NameLength];
    internal uint Lines;
}

/// <summary><c>struct gpio_v2_line_attribute</c>, its union read as 64 bits.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct LineAttribute
{
    internal uint Id;
    internal uint Padding;
    internal ulong Value;
}

/// <summary><c>struct gpio_v2_line_config_attribute</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct LineConfigAttribute
{
    internal LineAttribute Attribute;
    internal ulong LineMask;
}

/// <summary><c>struct gpio_v2_line_config</c>, of whose ten attributes one is ever used here.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct LineConfig
{
    internal LineFlags Flags;
    internal uint AttributeCount;
    internal fixed uint Padding[5];
    internal LineConfigAttribute FirstAttribute;
    internal fixed ulong OtherAttributes[3 * (KernelGpio.MaxAttributes - 1)];
}

/// <summary><c>struct gpio_v2_line_request</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct LineRequest
{
    internal fixed uint Offsets[64];
    internal fixed byte Consumer[KernelGpio.NameLength];
    internal LineConfig Config;
    internal uint LineCount;
    internal uint EventBufferSize;
    internal fixed uint Padding[5];
    internal int FileDescriptor;
}

/// <summary><c>struct gpio_v2_line_values</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct LineValues
{
    internal ulong Bits;
    internal ulong Mask;
}

/// <summary><c>struct gpio_v2_line_info</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct LineInfo
{
    internal fixed byte Name[KernelGpio.NameLength];
    internal fixed byte Consumer[KernelGpio.NameLength];
    internal uint Offset;
    internal uint AttributeCount;
    internal LineFlags Flags;
    internal fixed ulong Attributes[2 * KernelGpio.MaxAttributes];
    internal fixed uint Padding[4];
}

/// <summary><c>struct gpio_v2_line_event</c>.</summary>
[StructLayout(LayoutKind.Sequential)]
internal unsafe struct LineEvent
{
    internal ulong TimestampNs;
    internal uint Id;
    internal uint Offset;
    internal uint Sequence;
    internal uint LineSequence;
    internal fixed uint Padding[6];
}
