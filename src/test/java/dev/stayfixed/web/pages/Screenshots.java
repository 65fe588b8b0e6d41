package dev.stayfixed.web.pages;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.intake.pages.PlotOnAPage;
import dev.stayfixed.platform.OnH2;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * Pictures of the main pages and states, each alone and all on one contact sheet for each width and scheme, into target/screenshots, by
 * {@code mvn test -Dtest=Screenshots}; no part of the usual tests.
 */
@OnH2
@Import(PlotOnAPage.class)
@NeedsBrowser
class Screenshots {

    private static final Path FOLDER = Path.of("target", "screenshots");

    @LocalServerPort
    int port;

    @Test
    void take() throws IOException {
        take("http://127.0.0.1:" + port, FOLDER);
    }

    static void take(String service, Path folder) throws IOException {
        Files.createDirectories(folder);
        try (Browsers browsers = new Browsers()) {
            List<String> paths;
            try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
                paths = aDayAtTheShop(new Technician(window.page(), service));
            }
            for (int width : List.of(390, 1280)) {
                for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
                    String name = width + "-" + scheme.name().toLowerCase(Locale.ROOT);
                    try (Window window = browsers.window(width, true, scheme)) {
                        for (int i = 0; i < paths.size(); i++) {
                            window.page().navigate(service + paths.get(i));
                            window.page()
                                    .screenshot(new Page.ScreenshotOptions()
                                            .setFullPage(true)
                                            .setPath(folder.resolve(i + "-" + name + ".png")));
                        }
                    }
                    contactSheet(browsers, folder, name, paths);
                }
            }
        }
    }

    /** All pages of a width and scheme beside each other, each cut after its first screens. */
    private static void contactSheet(Browsers browsers, Path folder, String name, List<String> paths)
            throws IOException {
        StringBuilder sheet = new StringBuilder(
                "<!DOCTYPE html><html lang='en'><title>Contact sheet</title><style>body{display:flex;flex-wrap:wrap;gap:16px;font:14px sans-serif}"
                        + "figure{margin:0;width:300px}div{height:640px;overflow:hidden;border:1px solid #888}img{width:300px}</style>");
        for (int i = 0; i < paths.size(); i++) {
            sheet.append("<figure><div><img alt='' src='")
                    .append(i)
                    .append('-')
                    .append(name)
                    .append(".png'></div><figcaption>")
                    .append(paths.get(i)
                            .replaceAll("[0-9a-f]{8}-[0-9a-f-]{27}", "*")
                            .replaceAll("/(d|r)/[\\w-]+", "/$1/*"))
                    .append("</figcaption></figure>");
        }
        Path file = folder.resolve("sheet-" + name + ".html");
        Files.writeString(file, sheet);
        try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
            window.page().navigate(file.toUri().toString());
            window.page()
                    .screenshot(new Page.ScreenshotOptions()
                            .setFullPage(true)
                            .setPath(folder.resolve("sheet-" + name + ".png")));
        }
    }

    /** A few jobs in different states; the addresses of the pages worth a picture. */
    private static List<String> aDayAtTheShop(Technician technician) {
        technician.openJob("Grey estate, 1.8 petrol", "Mara Lindqvist");
        technician.recordRepair("Heater fuse and wiring of B1S2 mended", "2026-06-28T09:00");
        technician.openJob("Blue saloon, 2.0 petrol", "Orla Penrose");
        technician.recordRepair("Oxygen sensor B1S2 replaced", "2026-06-24T09:00");
        String fixed = technician.address();
        technician.addDrive("2026-06-25T08:00", Technician.RAN_CLEAN);
        technician.goTo(fixed);
        technician.addDrive("2026-06-26T08:00", Technician.RAN_CLEAN);
        technician.openJob("Green coupé, 1.6 petrol", "Jonas Abara");
        technician.recordRepair("Catalyst replaced", "2026-06-24T09:00");
        String back = technician.address();
        technician.addDrive("2026-06-25T08:00", Technician.RAN_AND_FAILED);
        technician.goTo(back);
        technician.addDrive("2026-06-26T08:00", Technician.RAN_AND_CONFIRMED);
        technician.openJob("White van, 2.2 diesel", "Kestrel Couriers");
        technician.openJob("Red hatchback, 1.4 petrol", "Tomás Iriarte");
        technician.recordRepair("Catalyst replaced", "2026-06-15T09:00");
        String job = technician.address();
        technician.addDrive("2026-06-16T08:00", Technician.RAN_CLEAN);
        technician.goTo(job);
        technician.addDrive("2026-06-17T18:00", Technician.RAN_AND_FAILED);
        technician.goTo(job);
        technician.addDrive("2026-06-18T08:00", Technician.RAN_AND_CONFIRMED);
        technician.goTo(job);
        technician.recordRepair("Exhaust leak ahead of the sensor sealed", "2026-06-22T15:00");
        technician.addDrive("2026-06-25T08:00", Technician.DID_NOT_RUN);
        technician.goTo(job);
        technician.addDrive("2026-06-26T08:00", Technician.RAN_CLEAN);
        String drive = technician.address();
        technician.goTo(job);
        technician.follow("Add a drive");
        String adding = technician.address();
        technician.goTo(job);
        technician.stateWarmUp();
        String check = technician.address();
        technician.goTo(job + "/sheet");
        technician.press("Make a link and its code");
        String link = technician.page().locator(".sheet-code a").getAttribute("href");
        String sheet = job + "/sheet?link=" + link.replaceFirst(".*/", "");
        String driver = link.substring(link.indexOf("/d/"));
        technician.goTo(fixed);
        technician.press("Close the job");
        technician.goTo(fixed + "/report");
        technician.press("Issue the report");
        technician.press("Make a link to this report");
        String shared = technician.page().locator("#share a").getAttribute("href");
        technician.goTo(back);
        technician.follow("What the monitor of P0420 needs");
        String needs = technician.address();
        technician.goTo(job);
        technician.follow("All jobs and drives of this vehicle");
        String vehicle = technician.address();
        return List.of(
                "/",
                job,
                fixed,
                back,
                drive,
                needs,
                vehicle,
                adding,
                "/jobs/new",
                job + "/repairs/new",
                sheet,
                driver,
                fixed + "/report",
                shared.substring(shared.indexOf("/r/")) + "?language=es",
                driver + "?language=de",
                "/closed",
                "/inbox",
                "/learning",
                "/settings",
                "/settings/notifications",
                "/settings/webhooks",
                "/reports/check",
                "/nowhere",
                PlotOnAPage.PATH,
                check);
    }
}
