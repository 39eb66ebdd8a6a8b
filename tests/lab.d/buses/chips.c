// What the lab adds to the kernel's i2c-stub, which knows SMBus only: plain transfers, as a service makes them through i2c-dev, and
// buses that trouble. `wide_addr` names chips whose registers have two bytes, high one first; `port_addr` those whose register 0x12
// and 0x13 show what was written to 0x14 and 0x15, as an MCP23017's do for lines that are outputs; `plain_addr` those that have no
// registers and say what they were last told, as a PCF8574 does whose lines nobody pulls low (data sheets, from memory).

#include <linux/delay.h>

static unsigned short wide_addr[MAX_CHIPS];
module_param_array(wide_addr, ushort, NULL, 0444);
static unsigned short port_addr[MAX_CHIPS];
module_param_array(port_addr, ushort, NULL, 0444);
static unsigned short plain_addr[MAX_CHIPS];
module_param_array(plain_addr, ushort, NULL, 0444);
// Whoever speaks waits until it is over.
static bool hangs;
module_param(hangs, bool, 0644);
// Nobody answers.
static bool is_cut;
module_param(is_cut, bool, 0644);

static bool is_one_of(const unsigned short *addresses, u16 address)
{
	int i;

	for (i = 0; i < MAX_CHIPS; i++)
		if (addresses[i] == address)
			return true;
	return false;
}

static struct stub_chip *chip_at(u16 address)
{
	int i;

	for (i = 0; i < stub_chips_nr; i++)
		if (chip_addr[i] == address)
			return stub_chips + i;
	return NULL;
}

static void chips_read(struct stub_chip *chip, struct i2c_msg *msg, bool is_wide)
{
	int i;

	for (i = 0; i < msg->len; i++)
		msg->buf[i] = !is_wide ? chip->words[chip->pointer++] & 0xff
			: i & 1 ? chip->words[chip->pointer] & 0xff : chip->words[chip->pointer] >> 8;
}

static void chips_write(struct stub_chip *chip, struct i2c_msg *msg, bool is_wide, bool has_ports)
{
	int i;

	chip->pointer = msg->buf[0];
	if (is_wide) {
		if (msg->len >= 3)
			chip->words[chip->pointer] = msg->buf[1] << 8 | msg->buf[2];
		return;
	}

	for (i = 1; i < msg->len; i++) {
		if (has_ports && (chip->pointer == 0x14 || chip->pointer == 0x15))
			chip->words[chip->pointer - 2] = msg->buf[i];
		chip->words[chip->pointer++] = msg->buf[i];
	}
}

static void chips_exchange(struct stub_chip *chip, struct i2c_msg *msg)
{
	int i;

	for (i = 0; i < msg->len; i++)
		if (msg->flags & I2C_M_RD)
			msg->buf[i] = chip->words[0] & 0xff;
		else
			chip->words[0] = msg->buf[i];
}

static int chips_transfer(struct i2c_adapter *adapter, struct i2c_msg *msgs, int num)
{
	int i;

	while (hangs)
		msleep(20);
	for (i = 0; i < num; i++) {
		struct i2c_msg *msg = &msgs[i];
		struct stub_chip *chip = is_cut ? NULL : chip_at(msg->addr);

		if (!chip)
			return -ENXIO;
		if (is_one_of(plain_addr, msg->addr))
			chips_exchange(chip, msg);
		else if (msg->flags & I2C_M_RD)
			chips_read(chip, msg, is_one_of(wide_addr, msg->addr));
		else if (msg->len)
			chips_write(chip, msg, is_one_of(wide_addr, msg->addr), is_one_of(port_addr, msg->addr));
	}
	return num;
}
