#include "app/command_line.h"

#include <iostream>

#include <CLI/CLI.hpp>

namespace shoulderline {

namespace {

constexpr const char* kVersion = "shoulderline " SHOULDERLINE_VERSION;

// NAME=TEXT, split at the first equals sign.
CLI::Option* addAssignments(CLI::App& app,
                            const char* option,
                            const char* typed,
                            const char* help,
                            std::vector<std::pair<std::string, std::string>>& into) {
    return app
        .add_option_function<std::vector<std::string>>(
            option,
            [&into](const std::vector<std::string>& texts) {
                for (const std::string& text : texts) {
                    const std::size_t at = text.find('=');
                    if (at == std::string::npos || at == 0) {
                        throw CLI::ValidationError("'" + text + "' is not NAME=VALUE");
                    }
                    into.emplace_back(text.substr(0, at), text.substr(at + 1));
                }
            },
            help)
        ->type_name(typed)
        ->allow_extra_args(false)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

void addCommon(CLI::App& app, CommandLine& line) {
    addAssignments(app,
                   "--with",
                   "NAME=EXPRESSION",
                   "as though that measure had been stated so (may be repeated)",
                   line.with);
    addAssignments(app,
                   "--stock",
                   "NAME=THICKNESS",
                   "as though that stock had this thickness (may be repeated)",
                   line.stock);
}

}  // namespace

std::optional<CommandLine> readCommandLine(int argc, char** argv, int& exitCode) {
    CommandLine line;
    CLI::App app(
        "Plans framed furniture: the piece is stated by its relations, and every length, tenon and "
        "mortise follows.\n\n"
        "Examples:\n"
        "  shoulderline armchair.shoulder\n"
        "  shoulderline check armchair.shoulder --with \"rail thickness=1 1/8 in\"\n"
        "  shoulderline print armchair.shoulder --what parts --paper A4 --scale 1:1 --out "
        "parts.pdf\n\n"
        "Exit codes: 0 done, nothing must be mended; 1 something must be mended; 2 the arguments "
        "or the file cannot be read;\n"
        "4 a file cannot be written.\n",
        "shoulderline");
    app.set_version_flag("--version", std::string(kVersion));
    app.add_option("file", line.file, "piece to open in the window (.shoulder)");
    addCommon(app, line);
    app.require_subcommand(0, 1);

    CLI::App* check =
        app.add_subcommand("check", "findings: what must be mended, what to look at, notes");
    CLI::App* sizes =
        app.add_subcommand("sizes", "measures, parts and joints with every size and its reasons");
    CLI::App* strength = app.add_subcommand(
        "strength", "estimates for comparing the joints, and the loads that work them");
    CLI::App* movement =
        app.add_subcommand("movement", "how far each part moves across its grain over a year");
    CLI::App* settle = app.add_subcommand(
        "settle", "chooses for all joints that meet inside a part, so that none do");
    CLI::App* print =
        app.add_subcommand("print", "drawings to a PDF file, or SVG files, at true scale");
    for (CLI::App* command : {check, sizes, strength, movement, settle, print}) {
        command->add_option("file", line.file, "piece to read (.shoulder)")
            ->required(command != print);  // a calibration sheet needs none
        addCommon(*command, line);
    }
    check->add_flag("--json", line.isJson, "as one JSON object, lengths in millimetres");
    sizes->add_flag("--json", line.isJson, "as one JSON object, lengths in millimetres");
    strength->add_flag("--json", line.isJson, "as one JSON object");
    movement->add_flag("--json", line.isJson, "as one JSON object, lengths in millimetres");
    settle->add_flag("--json", line.isJson, "as one JSON object");
    settle->add_option("--out",
                       line.out,
                       ".shoulder file to write the settled piece to; what is there is replaced");
    print
        ->add_option(
            "--what",
            line.what,
            "parts, piece, pictorial, assemblies, set for all sheets with an index, or at full "
            "size "
            "patterns, rods or story; calibration, without a piece, to measure a printer by")
        ->check(CLI::IsMember({"parts",
                               "piece",
                               "pictorial",
                               "assemblies",
                               "set",
                               "patterns",
                               "rods",
                               "story",
                               "calibration"}))
        ->capture_default_str();
    print
        ->add_option("--paper",
                     line.paper,
                     "Letter, Legal, Tabloid, A4 to A0, or a size such as \"300 x 1300 mm\"")
        ->capture_default_str();
    print
        ->add_option("--scale",
                     line.scale,
                     "1:1 tiles at full size; 1:5 and the like, or fit, one sheet each")
        ->capture_default_str();
    print->add_option("--overlap", line.overlap, "of neighbouring tiles, 10 mm to 40 mm")
        ->capture_default_str();
    print->add_flag("--leave-out-plain",
                    line.leavesOutPlain,
                    "leave out long plain stretches of full-size drawings where that saves sheets");
    print->add_option("--hold", line.held, "the paper upright, lying, or either as is best")
        ->check(CLI::IsMember({"upright", "lying", "either"}))
        ->capture_default_str();
    print
        ->add_option("--units",
                     line.units,
                     "as-piece, fractions, decimal, mm, or two with one in brackets: in-mm, mm-in")
        ->check(CLI::IsMember({"as-piece", "fractions", "decimal", "mm", "in-mm", "mm-in"}))
        ->capture_default_str();
    print->add_option(
        "--measured",
        line.measured,
        "\"ACROSS x UP\" that the calibration sheet of this paper measured on the "
        "printer which is to print the file; the pages are corrected for it and say so");
    print
        ->add_option("--out",
                     line.out,
                     "PDF file to write, or with .svg one SVG for each page (X-1.svg, X-2.svg, "
                     "...); what is there is replaced")
        ->required();
    try {
        app.parse(argc, argv);
    } catch (const CLI::Success& success) {
        exitCode = app.exit(success, std::cout, std::cerr);
        return std::nullopt;
    } catch (const CLI::ParseError& error) {
        std::cerr << "shoulderline: " << error.what() << " (see shoulderline --help)\n";
        exitCode = 2;
        return std::nullopt;
    }
    if (print->parsed() && line.file.empty() && line.what != "calibration") {
        std::cerr << "shoulderline: file is required (see shoulderline --help)\n";
        exitCode = 2;
        return std::nullopt;
    }
    line.isScaleGiven = print->count("--scale") > 0;
    line.command = check->parsed()      ? Command::Check
                   : sizes->parsed()    ? Command::Sizes
                   : strength->parsed() ? Command::Strength
                   : movement->parsed() ? Command::Movement
                   : settle->parsed()   ? Command::Settle
                   : print->parsed()    ? Command::Print
                                        : Command::Window;
    return line;
}

}  // namespace shoulderline
