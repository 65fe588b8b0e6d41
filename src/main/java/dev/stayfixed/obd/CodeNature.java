package dev.stayfixed.obd;

import java.util.Arrays;
import java.util.Optional;

/**
 * What kind of test a code's own description speaks of. It decides what can prove the repair: the check of a circuit runs all the
 * time and has no readiness bit, also where the circuit is a part of a system that has one.
 *
 * <p>By the failure type byte where the record carries one (categories of SAE J2012-DA, from memory), else by the published titles of
 * the generic codes of SAE J2012, read in two public lists: "Circuit", "Low", "High", "Open", "Shorted", "Intermittent", "No
 * Signal", "No Activity" and "Electrical" are circuits; "Range/Performance" and "Correlation" compare a signal with others.
 */
public enum CodeNature {
    /** An open or shorted line, no signal, or one outside its electrical limits: of a sensor, valve, heater, motor or supply. */
    CIRCUIT,
    /** A signal inside its electrical limits that does not fit the others, or an output that does not follow its command. */
    RANGE_PERFORMANCE,
    /** What a system does: efficiency, leak, flow, misfire, mixture, response, position reached, mechanical parts. */
    SYSTEM,
    /** A control unit itself: memory, processor, programming. */
    CONTROL_UNIT,
    /** Messages between control units. */
    NETWORK,
    /** The maker's own code, or a generic one that neither list names. */
    UNKNOWN;

    private record Row(CodeNature nature, CodeRanges codes) {}

    /** In the order of the numbers; powertrain titles of both lists, chassis and U3 codes from memory. */
    private static final Row[] ROWS = {
        row(
                CIRCUIT,
                "0001 0003-0007 0010 0013 001A-001F 0020 0023 002A-002F 0030-0038 0042-0045 0047-0048 004A 004C-004F 0050-0052"
                        + " 0056-0058 005E-005F 0062-0064 0066-0067 006E-006F 0070 0072-0086 007A 007C-007E 008C-008E 0090-0092"
                        + " 0095 0097-0099 009B-009D 00A0 00A2-00A5 00A7-00AA 00AC-00AE 00B1 00B3-00B5"),
        row(
                CIRCUIT,
                "0100 0102-0105 0107-0110 010A 010C-010E 0112-0115 0117-0120 0122-0124 012A 012C-012E 0130-0132 0134-0138 0140-0144"
                        + " 0146-0147 0150-0152 0154-0158 0160-0164 0166-0167 0176 0178-0180 0182-0185 0187-0190 018A 018C-018E"
                        + " 0192-0195 0197-0199"),
        row(
                CIRCUIT,
                "0200-0216 0220 0222-0225 0227-0233 022A-022F 0235 0237-0239 023A-023C 023F 0241-0243 0245-0247 0249-0251 024C"
                        + " 024E-024F 0253-0256 0258-0262 025A 025C-025D 0264-0265 0267-0268 0270-0271 0273-0274 0276-0277"
                        + " 0279-0280 0282-0283 0285-0286 0288-0289 0291-0292 0294-0295 02E0 02E2-02E3 02E6 02E8-02EA"),
        row(
                CIRCUIT,
                "0318-0320 0322-0323 0325 0327-0330 032A 032C-032E 0332-0335 0337-0340 033A 033C-033E 0342-0345 0347-0362 0365"
                        + " 0367-0385 037D-037F 0387-0390 0392-0394"),
        row(
                CIRCUIT,
                "0403 0405-0409 040A 040C-040E 0412-0419 041A 041C-041E 0425 0427-0429 042A 042C-042D 0435 0437-0439 043A 043C-043D"
                        + " 0443-0450 044A 044C-044F 0452-0454 0458-0460 045A 045C-045D 0462-0465 0467-0470 046D 046F 0472-0475"
                        + " 0477-0482 047A 047C-047E 0484-0487 0489-0490 048B 048D-048F 0498-0499 049F 04A1-04A3 04A6 04A8-04AA"),
        row(
                CIRCUIT,
                "0500 0502-0503 0508-0512 0515-0518 0520 0522-0523 0526 0528-0530 0532-0533 0535 0537-0550 0552-0555 0557-0573"
                        + " 0575-0577 0580-0584 0586-0589 0592-0599 0608-0609 0612 0615-0617 0620-0629 0635-0637 0640-0666 0668-0683"
                        + " 0685-0699"),
        row(
                CIRCUIT,
                "0702-0705 0707-0710 070A 070C-070E 0712-0715 0717-0720 071A-071F 0722-0725 0727-0728 0737-0740 0743-0745 0748-0750"
                        + " 0753-0755 0758-0760 0763-0765 0768-0770 0773-0775 0778-0779 0785 0787-0791 0793-0795 0798-0799 0801-0805"
                        + " 0807-0809 0812-0818 0830-0836 0838-0840 0842-0845 0847-0849 0863 0865-0866 0870 0872-0875 0877-0880"
                        + " 0882-0888 0890-0892"),
        row(
                CIRCUIT,
                "2008-2014 2016-2019 2021-2024 2026-2028 202A-202C 2031-2037 2039-2042 203A 203C-203E 2044-2065 204A 204C-204E"
                        + " 205A 205C-205E 2067-2069 2081 2083 2085 2087-2095 209A 209C-209D 20A0 20A2-20A3 20B9 20BB-20BD"
                        + " 20BF-20C1 20C3-20C5 20C7-20C8 20CB 20CD-20CE 20D1 20D3-20D4 20D7 20D9-20DA 20DD 20DF-20E1"),
        row(
                CIRCUIT,
                "2100 2102-2103 210A 210C-210D 2120 2122-2125 2127-2130 212A 212C-212E 2132-2134 213A 2141-2158 2160-2161"
                        + " 216A-216F 217B-217F 2182 2184-2186 2200 2202-2208 2210-2213 2215-2221 2223-2226 2228-2243 222A"
                        + " 222C-222E 2245-2247 2249-2260 2264 2266-2268 2283 2285-2287 2294-2296 229E 22A0-22A5 2300-2335"),
        row(
                CIRCUIT,
                "2400-2403 2405-2408 2410-2412 240A-240C 2418-2420 2425-2427 2430 2432-2435 2437-2439 2452 2454-2456 245A 245C-245E 2460-2462"
                        + " 2500-2501 2505 2507-2509 250A 250C-250E 2511-2515 2517-2525 2527-2539 2541-2544 2546-2548 2550-2552"
                        + " 2554-2556 2558-2559 2562 2564-2567 2569-2572 2574-2576 2586 2588-2590"),
        row(
                CIRCUIT,
                "2600 2602-2603 2605 2607-2608 260A-260C 2611-2634 261A 261C-261D 2637 2639-2641 2643-2645 2648-2650 2653-2655"
                        + " 2658-2660 2663-2671 2684-2686 2706 2709-2710 2713 2716-2718 2720-2722 2725-2727 2729-2731 2734-2736"
                        + " 2738-2740 2742-2745 2747-2749 2751-2756 2759-2761 2763-2765 2767-2771 2773-2774 2776-2778 2780-2782"
                        + " 2790-2795"),
        row(
                RANGE_PERFORMANCE,
                "0002 0026-0029 0039 0046 004B 0065 0068-0069 006A-006D 0071 007B 007F 008F 0096 009A 00A1 00A6 00AB 00B2 00B6 00B8"
                        + " 00BC-00BF 0101 0106 010B 010F 0111 0116 011A-011D 0121 012B 0177 0181 0186 018B 0191 0196 0221 0226"
                        + " 0236 023D-023E 0240 0244 0248 024D 0252 0257 025B 02E7 02EE-02F9 0321 0326 032B 0331 0336 033B 0341"
                        + " 0346 0366 0386 0391"),
        row(
                RANGE_PERFORMANCE,
                "0404 040B 040F 041B 0426 042B 0436 043B 044B 0451 045B 0461 0466 046A-046C 046E 0471 0476 047B 0483 0488 048C 04A0"
                        + " 04A7 0501 0504 0514 0521 0525 0527 0531 0536 0551 0556 0578-0579 0585 0590-0591 0638-0639 0667 0684"
                        + " 0706 070B 0711 0716 0721 0726 0786 0792 0806 0819 0837 0841 0846 0864 0871 0876 0881 0889"),
        row(
                RANGE_PERFORMANCE,
                "2015 2020 2025 202E-202F 2038 203B 2043 204B 205B 2066 2080 2082 2084 2086 209B 209E 20A1 20BA 20BE 20C2 20C6 20CC"
                        + " 20D2 20D8 20DE 2101 210E 2113-2116 2118 2121 2126 2131 2135-2140 213B 2159 215B 2162-2167 2183 2199"
                        + " 2201 2209 2214 2222 2227 222B 222F 2244 2248 2265 2284 229F 2404 2409 2431 2436 2453 245B 245F 2506 250B"
                        + " 2510 2516 2526 2540 2545 2549 2553 2557 2563 2568 2573 2587 2601 2604 2606 261B 2638 2642 2719 2728"
                        + " 2737 2741 2746 2750 2762 2766 2772 2775 2779 2784 2A00-2A05"),
        row(
                SYSTEM,
                "0008-0009 000A-000F 0011-0012 0014-0019 0021-0022 0024-0025 003A-003F 0040-0041 0049 0053-0055 0059-0061 005A-005D"
                        + " 0087-0089 008A-008B 0093-0094 009E-009F 00AF-00B0 00B7 00B9-00BB 0125-0129 0133 0139 013A-013F 0145"
                        + " 0148-0149 014A-014F 0153 0159 015A-015D 0165 0168-0175 018F 0217-0219 020A-020F 021A-021F 0234"
                        + " 024A-024B 0263 0266 0269 0272 0275 0278 0281 0284 0287 0290 0293 0296-0299 029A-02DF 0300-0316 02E1 02E4-02E5"
                        + " 02EB-02ED 0324 0363"),
        row(
                SYSTEM,
                "0400-0402 0410-0411 0420-0424 042E-042F 0430-0434 043E-043F 0440-0442 0455-0457 045E-045F 048A 0491-0497 049A-049E"
                        + " 04A4-04A5 0505-0507 0519 0524 0534 0574 0729-0736 072A-072F 073A-073F 0741-0742 0746-0747 074A-074F"
                        + " 0751-0752 0756-0757 0761-0762 0766-0767 0771-0772 0776-0777 0780-0784 0796-0797 0810-0811 0893-0896"),
        row(
                SYSTEM,
                "2000-2007 200A-200F 202D 2029-2030 203F 204F 205F 206E-206F 2070-2071 207F 2096-2099 20A4-20A5 20CF-20D0 20D5-20D6"
                        + " 20DB-20DC 20E2-20EF 20F0-20F5 2104-2105 2110-2112 2172-2175 2177-2181 2187-2198 219A-219F 2261-2263 2269-2282"
                        + " 2288-2293 228A-228F 2297-2298 229A-229D 2336-2347 2413-2417 2421-2424 2428-2429 242F 2440-2451 2457-2459"
                        + " 2463 2502-2504 2560 2577 2609 2635-2636 2646-2647 2651-2652 2656-2657 2661-2662 2700-2705 2707-2708"
                        + " 2711-2712 2714-2715 2723-2724 2732-2733 2757-2758 2783 2785-2789 3400 3497"),
        row(CONTROL_UNIT, "0601-0607 0610-0611 0613-0614 0618-0619 0630-0634 2107-2108 2610 U0300-U0331 U3000-U3002"),
        row(NETWORK, "0600"),
        row(CIRCUIT, "C0035 C0040 C0045 C0050 U3003-U3007"),
        row(RANGE_PERFORMANCE, "C0036 C0041 C0046 C0051"),
    };

    /** Cylinder deactivation, P3401 to P3496: open, performance, low and high in turn. */
    private static final CodeRanges VALVE_CONTROL = CodeRanges.of("3401-3496");

    private static final int NETWORK_LETTER = 3;

    private static Row row(CodeNature nature, String codes) {
        return new Row(nature, CodeRanges.of(codes));
    }

    /** Of this code, with its failure type where it carries one. */
    public static CodeNature of(TroubleCode code) {
        return byFailureType(code).orElseGet(() -> byNumber(code));
    }

    /** Type 00 says nothing further; the rest by its first digit. */
    private static Optional<CodeNature> byFailureType(TroubleCode code) {
        int type = code.failureType().orElse(0);
        if (type == 0) {
            return Optional.empty();
        }
        int category = type < 0x10 ? type : type >> 4;
        return switch (category) {
            case 1 -> Optional.of(CIRCUIT);
            case 2, 3, 6 -> Optional.of(RANGE_PERFORMANCE);
            case 4, 5 -> Optional.of(CONTROL_UNIT);
            case 7, 9 -> Optional.of(SYSTEM);
            case 8 -> Optional.of(NETWORK);
            default -> Optional.empty();
        };
    }

    private static CodeNature byNumber(TroubleCode code) {
        if (VALVE_CONTROL.contain(code)) {
            int lastTwoDigits = 10 * (code.number() >> 4 & 0xF) + (code.number() & 0xF);
            return lastTwoDigits % 4 == 2 ? RANGE_PERFORMANCE : CIRCUIT;
        }
        return Arrays.stream(ROWS)
                .filter(row -> row.codes().contain(code))
                .map(Row::nature)
                .findFirst()
                .orElse(code.number() >> 14 == NETWORK_LETTER ? NETWORK : UNKNOWN);
    }
}
