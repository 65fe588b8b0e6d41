package dev.stayfixed.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The same answers in several layouts. */
class ScanTextTest {

    private static final Message CODES = Message.of("03", 0, 0x43, 2, 0x04, 0x20, 0x01, 0x35);

    private static String text(Layout layout, Message message) {
        return new ScanText(layout).write(List.of(message));
    }

    @Test
    @DisplayName("ISO 15765-4: identifier, length, answer with a count of codes, filled to eight bytes")
    void can() {
        assertThat(text(Layout.CAN_HEADERS, CODES)).isEqualTo("7E8 06 43 02 04 20 01 35 00\n");
        assertThat(text(Layout.CAN_HEADERS_CLOSE, CODES)).isEqualTo("7E8064302042001350" + "0\n");
        assertThat(text(Layout.CAN_29_HEADERS, CODES)).isEqualTo("18 DA F1 10 06 43 02 04 20 01 35 AA\n");
        assertThat(text(Layout.HEADERLESS, CODES)).isEqualTo(">03\n43 02 04 20 01 35\n");
    }

    @Test
    @DisplayName("before CAN: no count, three codes in a message, 00 00 to fill; ISO 9141-2 checksum is the sum")
    void older() {
        assertThat(text(Layout.OLDER_HEADERLESS, CODES)).isEqualTo("43 04 20 01 35 00 00\n");
        assertThat(text(Layout.OLDER_HEADERS, CODES)).isEqualTo("48 6B 10 43 04 20 01 35 00 00 60\n");
    }

    @Test
    @DisplayName("ISO 15765-2: a long answer in a first frame with its length and numbered frames")
    void multiFrame() {
        Message vin = Message.of(
                "09 02", 0, 0x49, 0x02, 0x01, 0x47, 0x30, 0x53, 0x56, 0x41, 0x31, 0x41, 0x32, 0x30, 0x33, 0x43, 0x54,
                0x30, 0x30, 0x30, 0x30, 0x31);
        assertThat(text(Layout.CAN_HEADERS, vin)).isEqualTo("""
                        7E8 10 14 49 02 01 47 30 53
                        7E8 21 56 41 31 41 32 30 33
                        7E8 22 43 54 30 30 30 30 31
                        """);
    }

    @Test
    @DisplayName("49 CFR 565.15: invented VINs carry a valid check digit, the European style none")
    void vins() {
        assertThat(Vins.withCheckDigit("1M8GDM9A0KP042788")).isEqualTo("1M8GDM9AXKP042788");
        assertThat(Vins.withCheckDigit("11111111011111111")).isEqualTo("11111111111111111");
        assertThat(Vins.invented(3)).hasSize(17).matches("G0[A-HJ-NPR-Z0-9]{15}");
        assertThat(Vins.european(17)).hasSize(17).matches("U0[A-HJ-NPR-Z0-9]{15}");
    }
}
