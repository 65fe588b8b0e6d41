package dev.stayfixed.obd;

import java.util.Set;

/** Service bytes that this package reads: SAE J1979 $01 to $0A; of ISO 14229-1 $14, $19, $22 and the refusal. */
final class Services {

    static final int REFUSAL = 0x7F;
    static final int UDS_CODES = 0x59;
    static final int CLEARED = 0x44;
    static final int UDS_CLEARED = 0x54;
    static final int UDS_DATA = 0x62;

    private static final Set<Integer> REQUESTS = Set.of(0x10, 0x14, 0x19, 0x22, 0x3E);

    private Services() {}

    /** The first byte of an answer. */
    static boolean isAnswer(int service) {
        return (service >= 0x41 && service <= 0x4A)
                || service == UDS_CLEARED
                || service == UDS_CODES
                || service == UDS_DATA
                || service == REFUSAL;
    }

    /** The first byte of a request. */
    static boolean isRequest(int service) {
        return (service >= 0x01 && service <= 0x0A) || REQUESTS.contains(service);
    }
}
