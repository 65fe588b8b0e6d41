package dev.stayfixed.web.pages;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.intake.pages.PlotOnAPage;
import dev.stayfixed.platform.OnH2;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** Pictures of the main pages into target/screenshots, by {@code mvn test -Dtest=Screenshots}; no part of the usual tests. */
@OnH2
@Import(PlotOnAPage.class)
@NeedsBrowser
class Screenshots {

    @LocalServerPort
    int port;

    @Test
    void take() {
        take("http://127.0.0.1:" + port, Path.of("target", "screenshots"));
    }

    static void take(String service, Path folder) {
        try (Browsers browsers = new Browsers()) {
            List<String> paths;
            try (Window window = browsers.window(1280, true, ColorScheme.LIGHT)) {
                paths = aDayAtTheShop(new Technician(window.page(), service));
            }
            for (int width : List.of(390, 1280)) {
                for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
                    try (Window window = browsers.window(width, true, scheme)) {
                        for (int i = 0; i < paths.size(); i++) {
                            window.page().navigate(service + paths.get(i));
                            window.page()
                                    .screenshot(new Page.ScreenshotOptions()
                                            .setFullPage(true)
                                            .setPath(folder.resolve("%d-%d-%s.png"
                                                    .formatted(
                                                            i,
                                                            width,
                                                            scheme.name().toLowerCase(java.util.Locale.ROOT)))));
                        }
                    }
                }
            }
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
        return List.of("/", job, drive, "/jobs/new", job + "/repairs/new", "/settings", adding, PlotOnAPage.PATH);
    }
}
