package dev.stayfixed.simulator;

import static dev.stayfixed.simulator.Customer.measured;
import static dev.stayfixed.simulator.DrivePlan.commute;
import static dev.stayfixed.simulator.DrivePlan.idleOnly;
import static dev.stayfixed.simulator.DrivePlan.longDrive;
import static dev.stayfixed.simulator.DrivePlan.shortHop;
import static dev.stayfixed.simulator.Workshop.at;
import static dev.stayfixed.simulator.Workshop.step;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Nine repairs of an invented shop, one method each. What each one shows stands in the README of sample-logs. */
final class SampleStories {

    private static final String OKAFOR = "M. Okafor";
    private static final String LINDQVIST = "J. Lindqvist";

    private final Workshop shop;

    SampleStories(Workshop shop) {
        this.shop = shop;
    }

    void all() {
        heater();
        intermittent();
        misfire();
        catalyst();
        evap();
        circuit();
        oxygenSensor();
        egr();
        thermostat();
    }

    private Customer customer(String name, String words, long seed, Layout layout, Ask... without) {
        EnumSet<Ask> asked = EnumSet.allOf(Ask.class);
        asked.removeAll(List.of(without));
        return new Customer(shop, name, words, Car.of(seed, Combustion.SPARK), layout, asked);
    }

    private static void registered(Customer customer, String plate) {
        customer.registered(plate, Vins.modelYear(customer.car().vin()));
    }

    private static Map<String, Object> fault(String code) {
        Map<String, Object> fault = new LinkedHashMap<>();
        fault.put("code", code);
        return fault;
    }

    private static Map<String, Object> atLeast(String quantity, int min) {
        Map<String, Object> condition = new LinkedHashMap<>();
        condition.put("quantity", quantity);
        condition.put("min", min);
        return condition;
    }

    private void catalyst() {
        Customer car = customer("catalyst", "Hatchback, 1.6 petrol, silver", 101, Layout.CAN_HEADERS);
        car.falls("P0420", Repair.nothing(), 12);
        registered(car, "HL 101");
        String scan = car.scan("intake", "As it came in, engine off", at(12, "08:15"));
        car.job("2061", "Lamp on, nothing to be felt", at(12, "08:15"), scan, List.of());
        car.repaired(
                "repair",
                at(12, "14:30"),
                "P0420",
                Repair.holds(),
                OKAFOR,
                "Catalytic converter replaced, exhaust joints checked for leaks",
                List.of("catalytic converter", "two gaskets"),
                List.of(measured("rear oxygen sensor swing at 2500 rpm", "B1S2 signal wire", "V", 0, 0.2, 0.71, 0.06)));
        car.drives("drive-1", "Round the block", shortHop(at(11, "07:40")));
        Customer.Driven second =
                car.driven("drive-2", "Long drive, engine still running", longDrive(at(10, "07:35")), body -> body);
        car.drives("drive-3", "Long drive, engine still running", longDrive(at(9, "07:40")));
        shop.save(
                "logs/catalyst-drive-2-vss.csv",
                SignalLog.vss(at(10, "07:35"), second.truth().samples()));
        Map<String, Object> again = new LinkedHashMap<>(second.step());
        again.put("expectStatus", 200);
        shop.play(second.step());
        shop.play(again);
        car.closed();
    }

    private void evap() {
        Customer car = customer(
                "evap",
                "Estate, 2.0 petrol, green",
                102,
                Layout.HEADERLESS_CLOSE,
                Ask.STATUS,
                Ask.SUPPORTED_CODES,
                Ask.TEST_RESULTS,
                Ask.IN_USE);
        car.falls("P0456", Repair.nothing(), 8);
        registered(car, "HL 102");
        String scan = car.scan("intake", "As it came in, engine off", at(8, "09:00"));
        car.job("2064", "Smell of fuel now and then, lamp on", at(8, "09:00"), scan, List.of(fault("P0456")));
        car.repaired(
                "repair",
                at(8, "15:10"),
                "P0456",
                Repair.holds(),
                LINDQVIST,
                "Cracked vent hose at the charcoal canister replaced, system smoke-tested",
                List.of("vent hose"),
                List.of(measured("leak, equivalent orifice", "service port, 3 kPa", "mm", 0, 0.5, 0.9, 0)));
        car.car().drive(shortHop(at(8, "16:40")));
        car.drives("drive-1", "Warm start after an errand", longDrive(at(8, "17:20")));
        CycleTruth second = car.drives("drive-2", "Cold start, tank half full", longDrive(at(6, "06:45")));
        shop.save("logs/evap-drive-2-comma.csv", SignalLog.free(at(6, "06:45"), second.samples()));
        car.drives(
                "drive-3",
                "Cold start, tank just filled",
                longDrive(at(4, "06:50")).fuel(94));
    }

    private void heater() {
        Customer car = customer("heater", "Van, 2.0 petrol, white", 103, Layout.CAN_29_HEADERS);
        car.falls("P0141", Repair.nothing(), 20);
        registered(car, "HL 103");
        String scan = car.scan("intake", "As it came in, engine off", at(20, "08:00"));
        car.job("2052", "Lamp on", at(20, "08:00"), scan, List.of(fault("P0141")));
        car.repaired(
                "repair-1",
                at(20, "11:20"),
                "P0141",
                Repair.nothing(),
                LINDQVIST,
                "Connector of the rear sensor cleaned and pushed home",
                List.of(),
                List.of(measured("heater resistance", "B1S2, pins 3 and 4", "Ω", 4, 9, "OPEN", 8.8)));
        car.drives("drive-1", "Cold start, way to work", commute(at(19, "06:55")));
        car.drives("drive-2", "Cold start, way to work", commute(at(18, "06:55")));
        car.repaired(
                "repair-2",
                at(17, "10:05"),
                "P0141",
                Repair.holds(),
                OKAFOR,
                "Heater opens when hot: sensor replaced, supply and ground checked under load",
                List.of("oxygen sensor B1S2"),
                List.of(
                        measured("heater resistance", "B1S2, pins 3 and 4, cold", "Ω", 4, 9, "OPEN", 6.2),
                        measured(
                                "voltage drop, heater supply",
                                "fuse to pin 4, lamp as load",
                                "V",
                                0,
                                0.3,
                                0.12,
                                0.12)));
        car.drives("drive-3", "Cold start, way to work", commute(at(16, "06:55")));
        car.drives("drive-4", "Cold start, way to work", commute(at(15, "06:50")));
    }

    private void misfire() {
        Customer car = customer("misfire", "Saloon, 1.4 petrol, red", 104, Layout.CAN_HEADERS);
        car.falls("P0302", Repair.nothing(), 14);
        registered(car, "HL 104");
        String scan = car.scan("intake", "As it came in, engine off; note the freeze frame", at(14, "08:30"));
        car.job("2058", "Shakes when accelerating", at(14, "08:30"), scan, List.of(fault("P0302")));
        car.repaired(
                "repair",
                at(14, "13:00"),
                "P0302",
                Repair.holdsFor(3),
                OKAFOR,
                "Ignition coil and spark plug of cylinder 2 replaced",
                List.of("ignition coil", "spark plug"),
                List.of(measured("secondary resistance", "coil of cylinder 2", "kΩ", 8, 12, "OVER_LIMIT", 9.8)));
        car.drives("drive-1", "Idling in the yard", idleOnly(at(13, "07:30")));
        Customer.Driven second = car.driven("drive-2", "Country road", longDrive(at(12, "07:30")), body -> body);
        String log = "logs/misfire-drive-2-pids.csv";
        shop.save(log, SignalLog.pids(second.truth().samples()));
        second.step().put("logFile", log);
        shop.play(second.step());
        car.drives("drive-3", "Country road", longDrive(at(11, "07:25")));
        car.drives("drive-4", "Shakes again", longDrive(at(5, "07:30")));
    }

    private void circuit() {
        Customer car = customer("circuit", "Pick-up, 3.0 petrol, blue", 105, Layout.CAN_HEADERS_CLOSE);
        car.falls("P0102", Repair.nothing(), 7);
        registered(car, "HL 105");
        String scan = car.scan("intake", "As it came in, engine off", at(7, "08:40"));
        Map<String, Object> oneTrip = fault("P0102");
        oneTrip.put("trips", "ONE");
        car.job("2066", "No power, lamp on", at(7, "08:40"), scan, List.of(oneTrip));
        car.repaired(
                "repair-1",
                at(7, "10:00"),
                "P0102",
                Repair.nothing(),
                LINDQVIST,
                "Plug of the air mass sensor reseated",
                List.of(),
                List.of());
        car.drives("drive-1", "Test drive in town", shortHop(at(7, "10:40")));
        car.repaired(
                "repair-2",
                at(6, "14:15"),
                "P0102",
                Repair.holds(),
                LINDQVIST,
                "Broken signal wire behind the plug mended and sealed",
                List.of("0.5 m wire", "two sealed joints"),
                List.of(
                        measured("signal at idle", "air mass sensor, pin 5 to ground", "V", 0.6, 1.4, 0.02, 1.03),
                        measured("wire resistance", "pin 5 to computer pin 42", "Ω", 0, 1, "OPEN", 0.2)));
        car.drives("drive-2", "Test drive in town", shortHop(at(6, "15:00")));
    }

    private void intermittent() {
        Customer car = customer("intermittent", "Coupé, 2.5 petrol, black", 106, Layout.HEADERLESS);
        car.falls("P0340", Repair.intermittent(0.6), 17);
        registered(car, "HL 106");
        String scan = car.scan("intake", "As it came in, engine off", at(17, "16:00"));
        Map<String, Object> fivePasses = fault("P0340");
        fivePasses.put("requiredPasses", 5);
        car.job("2055", "Sometimes hard to start, lamp on", at(17, "16:00"), scan, List.of(fivePasses));
        car.repaired(
                "repair",
                at(16, "09:30"),
                "P0340",
                Repair.holds(),
                OKAFOR,
                "Loose pin in the camshaft sensor plug replaced, harness fastened",
                List.of("connector pin"),
                List.of(measured("pin drag", "camshaft sensor plug, pin 2", "N", 1, 4, 0.3, 2.1)));
        car.drives("drive-1", "Way to work", commute(at(15, "07:05")));
        car.drives("drive-2", "Way to work", commute(at(14, "07:00")));
        car.car().clearCodes();
        car.drives("drive-3", "Way to work; the owner had cleared codes at home", commute(at(13, "07:05")), body -> {
            body.put("codesClearedBefore", true);
            return body;
        });
        car.drives("drive-4", "Way to work", commute(at(12, "07:05")));
        car.drives("drive-5", "Way to work", commute(at(10, "07:10")));
    }

    private void oxygenSensor() {
        Customer car = customer("oxygen-sensor", "Small car, 1.1 petrol, yellow", 107, Layout.OLDER_HEADERLESS);
        car.falls("P0133", Repair.nothing(), 6);
        registered(car, "HL 107");
        String scan = car.scan("intake", "As it came in, engine off", at(6, "10:00"));
        Map<String, Object> slow = fault("P0133");
        slow.put(
                "enablingConditions",
                List.of(atLeast("RUN_TIME", 600), atLeast("PEAK_COOLANT", 75), atLeast("FAST_TIME", 120)));
        car.job("2069", "Uses more fuel than it did", at(6, "10:00"), scan, List.of(slow));
        car.repaired(
                "repair",
                at(6, "16:20"),
                "P0133",
                Repair.holds(),
                LINDQVIST,
                "Front oxygen sensor replaced",
                List.of("oxygen sensor B1S1"),
                List.of(measured("switches in 10 s at 2500 rpm", "B1S1 signal wire", "count", 8, 20, 3, 14)));
        car.drives("drive-1", "To the shops, written down by the owner", shortHop(at(5, "17:10")), body -> {
            body.remove("scans");
            return body;
        });
        car.drives("drive-2", "To the shops", shortHop(at(4, "17:05")));
        car.drives("drive-3", "Read with a failing adapter: lamp on and no code", commute(at(3, "17:10")), body -> {
            body.put("scans", List.of(Map.of("text", lampWithoutCode(body))));
            return body;
        });
    }

    /** A record that disagrees with itself: byte A of PID $01 says that the lamp is on for no code at all. */
    private static String lampWithoutCode(Map<String, Object> body) {
        String text =
                String.valueOf(((Map<?, ?>) ((List<?>) body.getOrDefault("scans", List.of())).get(0)).get("text"));
        return text.replace("41 01 00", "41 01 80");
    }

    private void egr() {
        Car diesel = Car.of(108, Combustion.COMPRESSION, Vins.european(4_711));
        Customer car = new Customer(
                shop, "egr", "People carrier, 1.9 diesel, grey", diesel, Layout.CAN_HEADERS, Ask.EVERYTHING);
        car.falls("P0401", Repair.nothing(), 3);
        car.registered("HL 108", 2020);
        String scan = car.scan("intake", "As it came in, engine off", at(3, "08:10"));
        car.job("2071", "Lamp on, black smoke", at(3, "08:10"), scan, List.of(fault("P0401")));
        car.repaired(
                "repair",
                at(3, "15:45"),
                "P0401",
                Repair.nothing(),
                OKAFOR,
                "Exhaust gas recirculation valve cleaned",
                List.of("gasket"),
                List.of(measured("valve travel", "position sensor, closed to open", "V", 2.6, 3.4, 0.9, 2.8)));
        car.drives("drive-1", "Motorway", longDrive(at(2, "06:40")));
        car.drives("drive-2", "Round the block", shortHop(at(1, "12:20")));
    }

    private void thermostat() {
        Customer car = customer("thermostat", "Roadster, 1.8 petrol, orange", 109, Layout.CAN_HEADERS);
        car.falls("P0128", Repair.nothing(), 4);
        registered(car, "HL 109");
        String scan = car.scan("intake", "As it came in, engine off", at(4, "08:05"));
        car.job("2070", "Heater stays lukewarm, lamp on", at(4, "08:05"), scan, List.of(fault("P0128")));
        Customer.Driven before = car.driven(
                "warm-up-before",
                "Warm-up before the repair, from cold",
                commute(at(4, "09:00")),
                SampleStories::alone);
        recorded(
                before,
                "thermostatBefore",
                SignalLog.pids(Sample.warmingSlowly(before.truth().samples())));
        Map<String, Object> check = new LinkedHashMap<>();
        check.put("preset", "WARM_UP");
        check.put("target", 82);
        check.put("minutes", 14);
        check.put("source", "Service information, cooling system, thermostat");
        Map<String, Object> stated = step("POST", "/jobs/${thermostatJob}/engine-checks", check, 201);
        stated.put("saveAs", "thermostatCheck");
        shop.play(stated);
        shop.play(run("BEFORE", "thermostatBefore"));
        car.repaired(
                "repair",
                at(4, "13:30"),
                "P0128",
                Repair.holds(),
                OKAFOR,
                "Thermostat stuck open: replaced, cooling system filled and bled",
                List.of("thermostat", "gasket", "coolant"),
                List.of());
        Customer.Driven after = car.driven(
                "warm-up-after", "Warm-up after the repair, from cold", commute(at(3, "07:10")), SampleStories::alone);
        recorded(after, "thermostatAfter", SignalLog.pids(after.truth().samples()));
        shop.play(run("AFTER", "thermostatAfter"));
    }

    /** The log tells what a summary would. */
    private static Map<String, Object> alone(Map<String, Object> body) {
        body.remove("summary");
        return body;
    }

    private void recorded(Customer.Driven drive, String name, String log) {
        String file = "logs/" + name.replaceFirst("(?=[A-Z])", "-warm-up-").toLowerCase(Locale.ROOT) + "-pids.csv";
        shop.save(file, log);
        drive.step().put("logFile", file);
        drive.step().put("saveAs", name);
        shop.play(drive.step());
    }

    private static Map<String, Object> run(String side, String drive) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("side", side);
        body.put("driveId", "${" + drive + "}");
        return step("POST", "/jobs/${thermostatJob}/engine-checks/${thermostatCheck}/runs", body, 200);
    }
}
