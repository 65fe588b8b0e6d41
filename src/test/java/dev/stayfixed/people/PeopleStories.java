package dev.stayfixed.people;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.AllRows;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.MailServer;
import dev.stayfixed.platform.MovingClock;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import jakarta.mail.internet.MimeMessage;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** People come in and go out: from the first owner to those who were removed. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class PeopleStories {

    private static final String PASSWORD = "a rather long password";
    private static final String JOB = "/api/v1/jobs";

    @LocalServerPort
    int port;

    @Autowired
    EntryLinks links;

    @Autowired
    Tokens tokens;

    @Autowired
    People people;

    @Autowired
    MailServer.Post post;

    @Autowired
    MovingClock clock;

    @Autowired
    JdbcConnectionDetails database;

    private JdbcClient jdbc;
    private Visitor owner;
    private int addresses;

    Visitor stranger() {
        return new Visitor(port, "203.0.113." + (++addresses % 250));
    }

    /** Before there is anybody, this machine is the owner and others need the code of the start; afterwards everybody signs in. */
    @BeforeAll
    void theFirstOwnerComes() {
        jdbc = AllRows.of(database);
        Client here = new Client(port);
        here.get("/settings").is(200);
        owner = stranger();
        assertThat(owner.open("/jobs/new").is(303).header("Location")).isEqualTo("/sign-in?to=%2Fjobs%2Fnew");
        assertThat(owner.open("/sign-in").is(302).header("Location")).endsWith("/first-owner");
        owner.open("/first-owner").is(200);
        String[] fields = {"name", "Rana Holt", "mail", "Rana@shop.example", "password", PASSWORD, "code", ""};
        assertThat(owner.submit("/first-owner", fields).is(422).body())
                .contains("the code that the start of the service wrote to its log")
                .doesNotContain(PASSWORD);
        fields[7] = "x".repeat(24);
        owner.submit("/first-owner", fields).is(422);
        String unused = links.forFirstOwner();
        fields[7] = links.forFirstOwner();
        fields[5] = "too short";
        owner.submit("/first-owner", fields).is(422);
        fields[5] = PASSWORD;
        assertThat(owner.submit("/first-owner", fields).is(302).header("Location"))
                .endsWith("/settings/people?said=first-owner");
        assertThat(owner.open("/settings/people").is(200).body()).contains("Rana Holt", "rana@shop.example");

        here.get("/settings").is(401);
        here.get(JOB).isProblem(401, "sign-in-needed");
        Visitor late = stranger();
        assertThat(late.open("/first-owner").is(302).header("Location")).endsWith("/sign-in");
        late.open("/sign-in");
        fields[7] = unused;
        assertThat(late.submit("/first-owner", fields).is(422).body()).contains("there is an owner");
    }

    private Visitor invited(String name, Role role) {
        owner.open("/settings/people");
        String page = owner.submit("/settings/people", "name", name, "mail", mail(name), "role", role.name())
                .is(200)
                .body();
        Visitor visitor = stranger();
        String invitation = path(page, "invitation-link");
        visitor.open(invitation).is(200);
        visitor.submit(invitation, "password", PASSWORD).is(302);
        visitor.open("/").is(200);
        return visitor;
    }

    private static String mail(String name) {
        return name.toLowerCase(Locale.ROOT).replace(' ', '.') + "@shop.example";
    }

    private static String path(String page, String id) {
        Matcher link = Pattern.compile("id=\"" + id + "\">https://cars.example(/[^<]+)<")
                .matcher(page);
        assertThat(link.find()).as(page).isTrue();
        return link.group(1);
    }

    private UUID idOf(String mail) {
        return jdbc.sql("select id from person where mail = ?")
                .param(mail)
                .query(UUID.class)
                .single();
    }

    @Test
    void eachDoesWhatTheirRoleAllows() {
        Visitor technician = invited("Tomas Vale", Role.TECHNICIAN);
        technician
                .json("POST", "/api/v1/vehicles", "{\"description\":\"red van\"}")
                .is(201);
        technician.open("/settings").is(403);
        technician.open("/settings/people").is(403);
        technician.json("GET", "/api/v1/webhooks", "").isProblem(403, "not-allowed");
        technician.json("POST", "/api/v1/backups", "").isProblem(403, "not-allowed");
        assertThat(technician.open("/").body()).contains("href=\"/account\"").doesNotContain("href=\"/settings\"");

        Visitor reader = invited("Ines Roth", Role.READER);
        reader.json("GET", "/api/v1/vehicles", "").is(200);
        reader.json("POST", "/api/v1/vehicles", "{\"description\":\"blue van\"}")
                .isProblem(403, "not-allowed");
        reader.open("/");
        reader.submit("/inbox/read").is(403);
    }

    @Test
    void whoeverIsRemovedIsOutAtOnceAndARoleHoldsAtOnce() {
        Visitor somebody = invited("Piet Lund", Role.READER);
        UUID id = idOf(mail("Piet Lund"));
        somebody.json("POST", "/api/v1/vehicles", "{\"description\":\"grey van\"}")
                .is(403);
        owner.open("/settings/people");
        owner.submit("/settings/people/" + id + "/role", "role", "TECHNICIAN").is(302);
        somebody.json("POST", "/api/v1/vehicles", "{\"description\":\"grey van\"}")
                .is(201);
        owner.submit("/settings/people/" + id + "/remove").is(302);
        somebody.json("GET", "/api/v1/vehicles", "").isProblem(401, "sign-in-needed");
        assertThat(jdbc.sql("select count(*) from person where id = ?")
                        .param(id)
                        .query(Integer.class)
                        .single())
                .isZero();
        owner.submit("/settings/people/" + id + "/remove").is(404);
    }

    @Test
    void aShopKeepsAnOwner() {
        UUID id = idOf("rana@shop.example");
        owner.open("/settings/people");
        assertThat(owner.submit("/settings/people/" + id + "/remove").is(422).body())
                .contains("make somebody else an owner first");
        owner.submit("/settings/people/" + id + "/role", "role", "READER").is(422);
        owner.submit("/settings/people/" + id + "/role", "role", "KING").is(404);
    }

    @Test
    void whoIsHereAlreadyIsNotInvitedTwice() {
        invited("Mia Brandt", Role.READER);
        owner.open("/settings/people");
        assertThat(owner.submit("/settings/people", "name", "Mia", "mail", "MIA.Brandt@shop.example", "role", "READER")
                        .is(422)
                        .body())
                .contains("an address that nobody signs in with yet");
        assertThat(owner.submit("/settings/people", "name", "", "mail", "no address", "role", "")
                        .is(422)
                        .body())
                .contains("say what they are called", "an address such as", "choose what they may do");
    }

    /** Else the owner of one shop could give the owner of another a password, before or after, and come in there. */
    @Test
    void whoIsInAnotherShopGetsNoInvitationHere() {
        UUID elsewhere = UUID.randomUUID();
        jdbc.sql("insert into shop (id, name, created_at) select ?, 'Elsewhere', created_at from shop where id = ?")
                .params(elsewhere, CurrentShop.DEFAULT)
                .update();
        people.add(elsewhere, "lena@other.example", "Lena Fuchs", Role.OWNER);
        UUID lena = idOf("lena@other.example");
        owner.open("/settings/people");
        assertThat(owner.submit("/settings/people", "name", "Lena", "mail", "LENA@other.example", "role", "READER")
                        .is(422)
                        .body())
                .contains("an address that nobody signs in with yet");
        for (String act : List.of("invitation", "remove", "sessions/end")) {
            owner.submit("/settings/people/" + lena + "/" + act).is(404);
        }
        owner.submit("/settings/people/" + lena + "/role", "role", "READER").is(404);
        String own = links.invitation(lena);
        stranger().open("/invitation/" + own).is(200);
        jdbc.sql(
                        "insert into membership (person_id, shop_id, role, since) select person_id, ?, 'READER', since from membership where person_id = ?")
                .params(CurrentShop.DEFAULT, lena)
                .update();
        stranger().open("/invitation/" + own).is(410);
        jdbc.sql("delete from membership where person_id = ? and shop_id = ?")
                .params(lena, CurrentShop.DEFAULT)
                .update();
    }

    /** What no person types is told, and breaks nothing. */
    @Test
    void oddInputIsTold() {
        Visitor stranger = stranger();
        stranger.open("/sign-in");
        for (String odd : List.of(
                "",
                "\u0000",
                "a\u0000b@shop.example",
                "x".repeat(100_000),
                "\ud83d\ude97@shop.example",
                "'; drop table person")) {
            assertThat(stranger.submit("/sign-in", "mail", odd, "password", odd, "to", odd)
                            .status())
                    .isBetween(400, 429);
            assertThat(stranger.submit("/sign-in/link", "mail", odd).status()).isBetween(200, 429);
            assertThat(stranger.open("/invitation/"
                                    + URLEncoder.encode(
                                            odd.substring(0, Math.min(99, odd.length())) + "x", StandardCharsets.UTF_8))
                            .status())
                    .isBetween(400, 410);
            owner.open("/settings/people");
            owner.submit("/settings/people", "name", odd, "mail", odd, "role", odd)
                    .is(422);
            assertThat(owner.submit("/settings/tokens", "name", odd, "scope", "READ", "days", odd)
                            .status())
                    .isEqualTo(422);
            assertThat(owner.submit(
                                    "/settings/tokens",
                                    "name",
                                    odd.isBlank() ? "x" + odd : odd,
                                    "scope",
                                    "READ",
                                    "days",
                                    "1")
                            .status())
                    .isLessThan(500);
            assertThat(owner.submit("/account/sessions/end", "id", odd.isEmpty() ? "x" : odd)
                            .status())
                    .isLessThan(500);
        }
    }

    /** The answer is the same for everybody; the mail comes to whoever is here. */
    @Test
    void aLinkInAMailSignsInOnce() throws Exception {
        invited("Wim Post", Role.READER);
        Visitor wim = stranger();
        wim.open("/sign-in");
        String sent = wim.submit("/sign-in/link", "mail", "Wim.Post@shop.example")
                .is(200)
                .body();
        String none = wim.submit("/sign-in/link", "mail", "nobody.at.all@shop.example")
                .is(200)
                .body();
        assertThat(sent).contains("a mail with a link is on its way");
        assertThat(sent.replaceAll("value=\"[^\"]*\"", "")).isEqualTo(none.replaceAll("value=\"[^\"]*\"", ""));
        String link = "";
        while (link.isEmpty()) {
            for (MimeMessage message : post.to("wim.post@shop.example")) {
                Matcher found = Pattern.compile("https://cars.example(/sign-in/link/\\S+)")
                        .matcher(message.getContent().toString());
                link = found.find() ? found.group(1) : link;
            }
            Thread.onSpinWait();
        }
        wim.open(link).is(200);
        wim.open("/account").is(303);
        wim.submit(link).is(302);
        wim.open("/account").is(200);
        Visitor other = stranger();
        other.open("/sign-in").is(200);
        other.open(link).is(410);
        other.submit(link).is(410);
        other.open("/sign-in/link/what").is(410);
    }

    @Test
    void anInvitationIsGoodOnceAndANewOneEndsIt() {
        owner.open("/settings/people");
        String first = path(
                owner.submit("/settings/people", "name", "Olga Reis", "mail", "olga@shop.example", "role", "READER")
                        .body(),
                "invitation-link");
        String second = path(
                owner.submit("/settings/people/" + idOf("olga@shop.example") + "/invitation")
                        .is(200)
                        .body(),
                "invitation-link");
        Visitor olga = stranger();
        olga.open(first).is(410);
        olga.open(second).is(200);
        olga.submit(second, "password", "short").is(422);
        olga.submit(second, "password", PASSWORD).is(302);
        Visitor other = stranger();
        other.open("/sign-in");
        other.submit(second, "password", PASSWORD).is(410);
        other.open("/invitation/what").is(410);
    }

    @Test
    void aWrongPasswordAndAnUnknownPersonAreToldAlike() {
        Visitor stranger = stranger();
        stranger.open("/sign-in").is(200);
        String wrong = stranger.submit("/sign-in", "mail", "rana@shop.example", "password", "wrong")
                .is(422)
                .body();
        String unknown = stranger.submit("/sign-in", "mail", "nobody@shop.example", "password", "wrong")
                .is(422)
                .body();
        assertThat(wrong.replaceAll("value=\"[^\"]*\"", "")).isEqualTo(unknown.replaceAll("value=\"[^\"]*\"", ""));
        assertThat(stranger.submit("/sign-in", "mail", "rana@shop.example", "password", PASSWORD, "to", "/jobs/new?x=1")
                        .is(302)
                        .header("Location"))
                .endsWith("/jobs/new?x=1");
        for (String elsewhere :
                List.of("//evil.example", "https://evil.example", "/\\evil.example", "javascript:x", "/a b", "")) {
            assertThat(stranger.submit("/sign-in", "mail", "rana@shop.example", "password", PASSWORD, "to", elsewhere)
                            .is(302)
                            .header("Location"))
                    .isIn("/", "http://127.0.0.1:" + port + "/");
        }
    }

    @Test
    void passwordsCannotBeTriedQuickly() {
        Visitor stranger = stranger();
        stranger.open("/sign-in");
        Answer last = stranger.submit("/sign-in", "mail", "tried@shop.example", "password", "0");
        for (int i = 1; last.status() == 422 && i < 50; i++) {
            last = stranger.submit("/sign-in", "mail", "tried@shop.example", "password", "guess " + i);
        }
        last.is(429);
        Visitor another = stranger();
        another.open("/sign-in");
        another.submit("/sign-in", "mail", "tried@shop.example", "password", "guess")
                .is(429);
        another.submit("/sign-in", "mail", "other@shop.example", "password", "guess")
                .is(422);
    }

    @Test
    void aSessionIsStoredByItsDigestEndsAndRunsOut() {
        Visitor one = invited("Nora Keel", Role.TECHNICIAN);
        String secret = one.cookie("stayfixed-session").orElseThrow();
        List<String> stored = jdbc.sql("select session_id from web_session")
                .query(String.class)
                .list();
        assertThat(stored).contains(LinkToken.hash(secret)).doesNotContain(secret);

        Visitor two = stranger();
        two.open("/sign-in");
        String before = two.cookie("stayfixed-session").orElse("none");
        two.submit("/sign-in", "mail", mail("Nora Keel"), "password", PASSWORD).is(302);
        assertThat(two.cookie("stayfixed-session").orElseThrow()).isNotEqualTo(before);
        assertThat(two.open("/account").is(200).body()).contains("this browser", "End all others");
        two.submit("/account/sessions/end").is(302);
        one.open("/account").is(303);
        two.open("/account").is(200);

        two.submit("/account/password", "present", "another", "password", "the next long password")
                .is(422);
        two.submit("/account/password", "present", PASSWORD, "password", "the next long password")
                .is(302);
        two.submit("/sign-out").is(302);
        two.open("/account").is(303);
        two.open("/sign-in");
        two.submit("/sign-in", "mail", mail("Nora Keel"), "password", PASSWORD).is(422);
        two.submit("/sign-in", "mail", mail("Nora Keel"), "password", "the next long password")
                .is(302);
        clock.forward(Duration.ofDays(31));
        two.open("/account").is(303);
        Visitor again = stranger();
        again.open("/sign-in");
        again.submit("/sign-in", "mail", "rana@shop.example", "password", PASSWORD)
                .is(302);
        owner = again;
    }

    @Test
    void aTokenDoesWhatItWasMadeForUntilItEnds() {
        owner.open("/settings/tokens");
        String page = owner.submit("/settings/tokens", "name", "dongle of the van", "scope", "DRIVES", "days", "30")
                .is(200)
                .body();
        Matcher shown = Pattern.compile("id=\"token-secret\">(stayfixed_[A-Za-z0-9_-]{43})<")
                .matcher(page);
        assertThat(shown.find()).isTrue();
        String bearer = "Bearer " + shown.group(1);
        assertThat(owner.open("/settings/tokens").body())
                .doesNotContain(shown.group(1))
                .contains("dongle of the van");
        String vehicle = owner.json("POST", "/api/v1/vehicles", "{\"description\":\"token van\"}")
                .is(201)
                .id();

        Client program = new Client(port);
        program.get("/api/v1/vehicles", "Authorization", bearer).isProblem(403, "not-allowed");
        program.post("/api/v1/vehicles", "{\"description\":\"x\"}", "Authorization", bearer)
                .isProblem(403, "not-allowed");
        program.postText("/api/v1/vehicles/" + vehicle + "/drives", "43 00", "Authorization", bearer)
                .is(201);
        // PID $A6: 12000.0 km, then 11000.0 km; a device cannot make sure that it is in the same car.
        String drive = """
                {"start":"2026-06-0%dT08:00:00Z","sameVehicleConfirmed":true,"scans":[{"text":"41 A6 %s"}]}""";
        String drives = "/api/v1/vehicles/" + vehicle + "/drives";
        program.post(drives, drive.formatted(2, "00 01 D4 C0"), "Authorization", bearer)
                .is(201);
        String back = drive.formatted(3, "00 01 AD B0");
        program.post(drives, back, "Authorization", bearer).isProblem(422, "other-vehicle");
        owner.json("POST", drives, back).is(201);
        assertThat(owner.open("/settings/tokens").body()).contains("Last used about");

        clock.forward(Duration.ofDays(31));
        program.get("/api/v1/vehicles", "Authorization", bearer).isProblem(401, "sign-in-needed");
        clock.forward(Duration.ofDays(-31));
        UUID id = tokens.of(CurrentShop.DEFAULT).stream()
                .filter(token -> token.name().equals("dongle of the van"))
                .findFirst()
                .orElseThrow()
                .id();
        owner.submit("/settings/tokens/" + id + "/end").is(302);
        program.get("/api/v1/vehicles", "Authorization", bearer).isProblem(401, "sign-in-needed");
        program.get("/api/v1/vehicles", "Authorization", "Basic cmFuYTp4").isProblem(401, "sign-in-needed");
        program.get("/api/v1/vehicles", "Authorization", "Bearer").isProblem(401, "sign-in-needed");
    }

    @Test
    void whatThereIsNobodyLearnsWhoMayNotComeIn() {
        String there = owner.json("POST", "/api/v1/vehicles", "{\"description\":\"hidden van\"}")
                .is(201)
                .id();
        Visitor stranger = stranger();
        for (String pattern : List.of("/api/v1/vehicles/%s", "/vehicles/%s", "/api/v1/vehicles/%s/drives")) {
            String of = pattern.formatted(there);
            String none = pattern.formatted(UUID.randomUUID());
            Answer known = stranger.json("GET", of, "").is(401);
            Answer unknown = stranger.json("GET", none, "").is(401);
            assertThat(known.body().replaceAll("urn:uuid:[0-9a-f-]+", ""))
                    .isEqualTo(unknown.body().replaceAll("urn:uuid:[0-9a-f-]+", ""));
        }
    }

    /** 180 MB to an address that asks for a person are not read: the answer comes before them. */
    @Test
    void nothingOfAStrangersBodyIsRead() throws Exception {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream()
                    .write(("POST /api/v1/vehicles HTTP/1.1\r\nHost: 127.0.0.1:" + port
                                    + "\r\nX-Forwarded-For: 203.0.113.1\r\nContent-Type: application/json\r\nContent-Length: 188743680\r\n\r\n{")
                            .getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().flush();
            byte[] answer = new byte[12];
            assertThat(socket.getInputStream().readNBytes(answer, 0, 12)).isEqualTo(12);
            assertThat(new String(answer, StandardCharsets.US_ASCII)).isEqualTo("HTTP/1.1 401");
        }
    }

    /** Each row of access.csv: whoever lacks what it needs is refused, whoever has it is not. */
    @Test
    void eachDoorIsShutToWhoeverLacksWhatItNeeds() {
        Visitor technician = invited("Door Technician", Role.TECHNICIAN);
        Visitor reader = invited("Door Reader", Role.READER);
        String drives = tokens.make(CurrentShop.DEFAULT, "doors", Scope.DRIVES, Duration.ofDays(1));
        String ended = tokens.make(CurrentShop.DEFAULT, "ended", Scope.WORK, Duration.ofDays(1));
        tokens.end(CurrentShop.DEFAULT, tokens.find(ended).orElseThrow().id());
        Map<String, Knock> who = new LinkedHashMap<>();
        who.put("a stranger", row -> row.by(stranger()));
        who.put("an ended token", row -> row.by(port, ended));
        who.put("a token for drives", row -> row.by(port, drives));
        who.put("a reader", row -> row.by(reader));
        who.put("a technician", row -> row.by(technician));
        who.put("an owner", row -> row.by(owner));
        List<String> wrong = new ArrayList<>();
        for (DoorRow row : DoorRow.tried()) {
            who.forEach((name, knock) -> {
                int status = knock.at(row);
                if (row.isOpenTo(name) == row.isRefusal(status)) {
                    wrong.add(name + " at " + row + ": " + status);
                }
            });
        }
        assertThat(wrong).isEmpty();
    }

    /** Somebody's try at a door; the status that was answered. */
    private interface Knock {
        int at(DoorRow row);
    }

    /** An address without a row: write down in access.csv who may come to it, and see that it is so. */
    @Test
    void everyEndpointHasARow(
            @Autowired @Qualifier("requestMappingHandlerMapping") RequestMappingHandlerMapping mappings) {
        Set<String> there = new TreeSet<>();
        mappings.getHandlerMethods()
                .forEach((mapping, method) -> mapping.getPatternValues().stream()
                        .filter(pattern -> !pattern.startsWith("/planted-failure"))
                        .forEach(pattern -> mapping.getMethodsCondition().getMethods().stream()
                                .map(Enum::name)
                                .forEach(verb -> there.add(verb + " " + pattern))));
        assertThat(there)
                .isEqualTo(DoorRow.all().stream().map(DoorRow::address).collect(Collectors.toCollection(TreeSet::new)));
    }
}
