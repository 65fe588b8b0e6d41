package dev.stayfixed.recording;

import static dev.stayfixed.drive.signal.Signal.*;

import dev.stayfixed.drive.signal.Signal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Words by which loggers name signals, in English, German, French, Spanish, Italian, Dutch, Portuguese and Polish, without accents; the
 * first line that fits decides. Each line also lists every word that such a name consists of: a word that is not among them may make
 * it another quantity, and some words surely do. Common practice, no source.
 */
final class CommonWords {

    /**
     * What a header seems to name.
     *
     * @param other a word that makes it another quantity than the signal
     * @param unexplained words of which it is not known what they change
     */
    record Naming(Signal signal, Optional<String> other, List<String> unexplained) {}

    private record Line(Pattern words, Optional<Signal> signal, Set<String> own, Set<String> other) {}

    private static final Set<String> NEUTRAL =
            words("the of in at from sensor value signal reading data raw obd obd2 obdii ecu ecm pcm pid"
                    + " actual current live measured engine motor istwert ist wert aktuell actuel actuelle actual attuale valeur valor valore"
                    + " de du des la le les l d el del della dello dell di do da der den das van het bank 1 b1");

    /** Words that turn a signal into another quantity: a mean, a limit, something wanted, another thing's. */
    private static final Set<String> OTHER = words(
            "average avg mean max maximum maximal min minimum peak highest lowest top set setpoint"
                    + " target desired commanded command cmd requested request demand limit limiter wanted reference ref wind idle cruise wheel"
                    + " fan turbine turbo pump input output shaft gear gearbox transmission difference diff delta error deviation predicted"
                    + " expected modeled modelled model previous last stored freeze frame trailer"
                    + " durchschnitt durchschnittliche mittlere mittelwert hochst hochste maximale minimale soll sollwert ziel leerlauf grenzwert"
                    + " moyenne moyen maximum consigne cible vent ralenti roue demandee demande"
                    + " media medio promedio maxima maximo minima minimo deseada deseado objetivo consigna viento ralenti rueda"
                    + " massima massimo richiesta richiesto obiettivo vento ruota minima"
                    + " gemiddelde gemiddeld gewenste gewenst stationair wiel doel"
                    + " alvo desejada desejado marcha lenta roda"
                    + " srednia srednie maksymalna maksymalne minimalna zadana zadane wiatru wiatr jalowy kola docelowa");

    private static final List<Line> LINES = new ArrayList<>();

    static {
        not(
                "o2|oxygen|lambda|egr|air fuel|afr|torque|timing|fan|transmission|gear|limit|target|desired|with mil|mil on");
        line(
                "\\bmil\\b|malfunction indicator|check engine",
                MIL,
                "mil malfunction indicator lamp light check status on");
        line("warm ?ups?", WARM_UPS_SINCE_CLEAR, "warm up ups warmups since clear cleared codes dtc dtcs number count");
        line(
                "(distance|traveled|km).*clear",
                DISTANCE_SINCE_CLEAR,
                "distance traveled travelled km since clear cleared codes code dtc dtcs");
        line("time.*clear", MINUTES_SINCE_CLEAR, "time run since clear cleared codes code dtc dtcs trouble");
        line(
                "coolant.*temp|\\bect\\b|coolant$|kuhlmittel|kuhlwasser|kuehlmittel|koelvloeistof|koelwater|refroidissement|refrigerante"
                        + "|arrefecimento|anticongelante|liquido.*raffreddamento|temp.*acqua|temp.*eau\\b|chlodzac|chlodziwa|temp.*agua",
                COOLANT,
                "coolant temp temperature temperatur water ect t kuhlmittel kuhlmitteltemperatur kuhlmitteltemp kuhlwasser"
                        + " kuhlwassertemperatur kuehlmittel kuehlmitteltemperatur koelvloeistof koelvloeistoftemperatuur koelwater"
                        + " koelwatertemperatuur temperatuur liquide refroidissement eau moteur temperatura liquido refrigerante motore"
                        + " anticongelante arrefecimento raffreddamento acqua agua plynu chlodzacego cieczy chlodzacej chlodziwa silnika"
                        + " plyn",
                "2 outlet radiator");
        line(
                "ambient|outside (air )?temp|exterior (air )?temp|aussentemp|umgebungstemp|buitentemp|omgevingstemp|temp.*exterieur"
                        + "|temp.*exterior|temp.*estern|temp.*extern|temp.*otoczenia|temp.*zewnetrzn|zewnetrzna",
                AMBIENT,
                "ambient air outside outdoor exterior temp temperature temperatur t aussentemperatur aussentemp umgebungstemperatur"
                        + " umgebungsluft umgebungslufttemperatur buitentemperatuur omgevingstemperatuur temperatura ambiante ambiente"
                        + " exterieure esterna externa aria ar aire otoczenia zewnetrzna powietrza");
        line(
                "cat(alyst|alytic)?.*temp",
                CATALYST,
                "cat catalyst catalytic converter temp temperature s1 b1s1",
                "2 b2s1 b1s2 b2s2 b2 s2 inlet outlet");
        line(
                "\\boil.*temp|\\beot\\b|oltemp|oeltemp|temp.*\\b(olio|huile|aceite|oleo|oleju)",
                OIL,
                "oil temp temperature eot oltemperatur oltemp motoroltemperatur temperatura olio huile moteur aceite oleo oleju silnika"
                        + " motore");
        line(
                "\\biat\\b|intake.*temp|air temp|ansaugluft|inlaatlucht|temp.*admission|temp.*aspira|temp.*admisi|temp.*admissao|temp.*dolo"
                        + "|temp.*dolotow",
                INTAKE_AIR,
                "iat intake air temp temperature inlet manifold ansauglufttemperatur ansaugluft ansauglufttemp inlaatluchttemperatuur"
                        + " temperatura air admission aria aspirata aspirazione aire admision ar admissao powietrza dolotowego dolocie"
                        + " dolotu w",
                "2 charge post");
        line(
                "\\brpm\\b|engine speed|engine revolution|drehzahl|\\brevs\\b|toerental|regime|\\btours\\b|\\bgiri\\b|rotac(ao|oes)"
                        + "|revoluciones|\\bregimen\\b|obrotowa|\\bobroty\\b",
                ENGINE_SPEED,
                "rpm speed revolution revolutions revs drehzahl motordrehzahl crankshaft toerental motortoerental regime moteur tours giri"
                        + " motore rotacao rotacoes revoluciones regimen predkosc obrotowa silnika obroty per minute",
                "turbin");
        line("absolute (engine )?load|\\babs load", ABSOLUTE_LOAD, "absolute abs load");
        line(
                "(engine|calculated|calc).*load|\\bload\\b|motorlast|\\bcharge\\b.*(moteur|calcul)|carga.*(motor|calculad)"
                        + "|carico.*(motore|calcolat)|motorbelasting|obciazenie",
                LOAD,
                "calculated calc load motorlast charge moteur calculee carga calculada carico motore calcolato motorbelasting obciazenie"
                        + " silnika obliczone berechnete");
        line(
                "\\bmaf\\b|air flow|airflow|mass flow|luftmasse",
                AIR_FLOW,
                "maf air flow airflow mass rate luftmasse luftmassenstrom massenstrom");
        line(
                "barometric|barometer|\\bbaro\\b|atmospheric pressure|luftdruck",
                BAROMETER,
                "barometric barometer baro atmospheric pressure absolute luftdruck press");
        line(
                "\\bmap\\b|manifold.*pressure|saugrohrdruck",
                MANIFOLD_PRESSURE,
                "map manifold absolute pressure intake air saugrohrdruck abs");
        line(
                "pedal|accelerator",
                PEDAL,
                "pedal accelerator position pos gaspedal gaspedalstellung fahrpedal",
                "e f c b relative rel brake clutch");
        line(
                "throttle|\\btps\\b|drosselklappe",
                THROTTLE,
                "throttle tps position pos absolute abs a drosselklappe drosselklappenstellung plate",
                "b c f relative rel actuator control");
        line(
                "fuel (tank )?level|tank level|tankinhalt|tankfull|kraftstoffstand|kraftstofffull|tankfullstand|niveau.*carburant"
                        + "|nivel.*combustible|livello.*carburante|brandstof(niveau|peil)|nivel.*combustivel|poziom.*paliwa",
                FUEL_LEVEL,
                "fuel tank level remaining tankinhalt tankfullung tankfullstand kraftstoffstand kraftstofffullstand niveau carburant"
                        + " nivel combustible livello carburante brandstofniveau brandstofpeil combustivel poziom paliwa reservoir",
                "b 2");
        line("(short term|stft|short).*(trim|stft).*2|stft ?2", SHORT_TRIM_2, "short term fuel trim stft 2 stft2 b2");
        line("(long term|ltft|long).*(trim|ltft).*2|ltft ?2", LONG_TRIM_2, "long term fuel trim ltft 2 ltft2 b2");
        line("short term.*trim|stft", SHORT_TRIM, "short term fuel trim stft stft1");
        line("long term.*trim|ltft", LONG_TRIM, "long term fuel trim ltft ltft1");
        line("purge", PURGE, "commanded command evaporative evap purge valve duty cycle canister");
        line("evap.*press|vapou?r press", EVAP_PRESSURE, "evap evaporative system vapor vapour pressure");
        line(
                "module volt|battery volt|\\bvoltage\\b|bordspannung",
                MODULE_VOLTAGE,
                "control module voltage battery volt volts bordspannung system");
        line(
                "run ?time|time since (engine )?start|motorlaufzeit|\\blaufzeit|temps.*fonctionnement|tiempo.*(funcionamiento|arranque)"
                        + "|tempo.*funzionamento|looptijd|tempo.*funcionamento|czas pracy",
                RUN_TIME,
                "run time runtime since start motorlaufzeit laufzeit temps fonctionnement moteur tiempo funcionamiento arranque tempo"
                        + " funzionamento motore looptijd motorlooptijd funcionamento czas pracy silnika");
        line(
                "odometer|kilometerstand|mileage|\\bcompteur|cuentakilometros|contachilometri|hodometro|przebieg",
                ODOMETER,
                "odometer kilometerstand mileage total reading cuentakilometros contachilometri hodometro przebieg");
        line(
                "(trip|cumulative).*dist|dist.*(trip|cumulative|since start)",
                TRIP_DISTANCE,
                "trip cumulative distance dist drive since start");
        line(
                "\\bspeed\\b|velocity|\\bvss\\b|geschwindigkeit|\\bkm/?h\\b|\\bmph\\b|\\bvitesse\\b|velocidad|velocita|snelheid|velocidade"
                        + "|predkosc",
                VEHICLE_SPEED,
                "speed vehicle velocity vss road car kmh km/h mph geschwindigkeit fahrzeuggeschwindigkeit fahrgeschwindigkeit vitesse"
                        + " vehicule velocidad vehiculo velocita veicolo snelheid voertuigsnelheid rijsnelheid velocidade veiculo"
                        + " predkosc pojazdu");
    }

    private CommonWords() {}

    private static Set<String> words(String list) {
        return list.isEmpty() ? Set.of() : new HashSet<>(Arrays.asList(list.split(" ", -1)));
    }

    private static void line(String words, Signal signal, String own) {
        line(words, signal, own, "");
    }

    private static void line(String words, Signal signal, String own, String other) {
        LINES.add(new Line(Pattern.compile(words), Optional.of(signal), words(own), words(other)));
    }

    private static void not(String words) {
        LINES.add(new Line(Pattern.compile("\\b(" + words + ")\\b"), Optional.empty(), Set.of(), Set.of()));
    }

    static Optional<Naming> named(HeaderText header) {
        return LINES.stream()
                .filter(line -> line.words().matcher(header.words()).find())
                .findFirst()
                .flatMap(line -> line.signal().map(signal -> naming(header, signal, line)));
    }

    /** The words of a header whose signal a published name gives. */
    static List<String> unexplained(HeaderText header, Signal signal) {
        return LINES.stream()
                .filter(line -> line.signal().filter(s -> s == signal).isPresent())
                .findFirst()
                .map(line -> naming(header, signal, line))
                .map(naming -> naming.other().map(List::of).orElse(naming.unexplained()))
                .orElse(List.of());
    }

    private static Naming naming(HeaderText header, Signal signal, Line line) {
        Optional<SourceUnit> unit = header.unit().filter(stated -> stated.fits(signal));
        List<String> strange = new ArrayList<>();
        for (String word : header.words().split(" ", -1)) {
            boolean own = line.own().contains(word)
                    || unit.filter(stated -> stated.isSpelled(word)).isPresent();
            if (!own && (line.other().contains(word) || OTHER.contains(word))) {
                return new Naming(signal, Optional.of(word), List.of());
            }
            if (!own && !word.isEmpty() && !NEUTRAL.contains(word)) {
                strange.add(word);
            }
        }
        return new Naming(signal, Optional.empty(), strange);
    }
}
