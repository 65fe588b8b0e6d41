package dev.stayfixed.web;

import dev.stayfixed.platform.TellingOnPostgres;

@TellingOnPostgres
class ScenariosOnPostgresTest extends ArguedScenarios {}
