using System.Runtime.CompilerServices;
using RackController.Hardware.CharacterDevice;

namespace RackController.Hardware.Tests.CharacterDevice;

/// <summary>Sizes and numbers of the interface: include/uapi/linux/gpio.h and asm-generic/ioctl.h of Linux 6.1.</summary>
public sealed class KernelGpioTests
{
    private const uint ReadOnly = 2;
    private const uint ReadWrite = 3;

    [Fact]
    public void TheStructuresHaveTheSizesOfTheKernels()
    {
        Assert.Equal(68, Unsafe.SizeOf<ChipInfo>());
        Assert.Equal(16, Unsafe.SizeOf<LineAttribute>());
        Assert.Equal(24, Unsafe.SizeOf<LineConfigAttribute>());
        Assert.Equal(272, Unsafe.SizeOf<LineConfig>());
        Assert.Equal(592, Unsafe.SizeOf<LineRequest>());
        Assert.Equal(16, Unsafe.SizeOf<LineValues>());
        Assert.Equal(256, Unsafe.SizeOf<LineInfo>());
        Assert.Equal(48, Unsafe.SizeOf<LineEvent>());
    }

    [Fact]
    public void TheRequestCodesFollowFromDirectionSizeAndNumber()
    {
        Assert.Equal(KernelGpio.GetChipInfo, Code<ChipInfo>(ReadOnly, 0x01));
        Assert.Equal(KernelGpio.GetLineInfo, Code<LineInfo>(ReadWrite, 0x05));
        Assert.Equal(KernelGpio.GetLine, Code<LineRequest>(ReadWrite, 0x07));
        Assert.Equal(KernelGpio.SetLineConfig, Code<LineConfig>(ReadWrite, 0x0D));
        Assert.Equal(KernelGpio.GetLineValues, Code<LineValues>(ReadWrite, 0x0E));
        Assert.Equal(KernelGpio.SetLineValues, Code<LineValues>(ReadWrite, 0x0F));
    }

    private static uint Code<T>(uint direction, uint number) =>
        (direction << 30) | ((uint)Unsafe.SizeOf<T>() << 16) | (0xB4 << 8) | number;
}
