#include <iostream>

#include <fmt/format.h>

#include "batch/check_json.hpp"
#include "batch/context.hpp"
#include "desk/issue_words.hpp"
#include "desk/issuing.hpp"
#include "desk/proof_of_delivery.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::IssueRequest request;
  std::string side;
  std::string on;
  std::string sheet;
  bool letter = false;
  bool no_name = false;
  bool by_forecast = false;
};

Side side_option(const std::string& text) {
  const auto side = parse_word<Side>(text);
  if (!side) throw WrongUse{fmt::format("--side '{}' is not known; write left or right.", text)};
  return *side;
}

void print_words(const desk::IssueCheck& check) {
  std::cout << desk::issue_text(check) << '\n';
}

desk::IssueRequest request_of(const Options& options) {
  auto request = options.request;
  request.side = side_option(options.side);
  return request;
}

Date day_of(const Context& context, const Options& options) {
  return options.on.empty() ? context.today() : date_option("--on", options.on);
}

/// The forecast of the day, where it is asked for: it takes the clinic's whole history.
desk::ExpectedWear expected_wear(const Context& context, const Options& options, Date day) {
  if (!options.by_forecast) return {};
  const auto assessment = std::make_shared<desk::Assessment>(
      desk::forecast(context.clinic_on(day), desk::built_in_priors(), day));
  return [assessment](const desk::IssueQuestion& question) {
    return desk::expected_days(*assessment, question);
  };
}

int check(const Context& context, const Options& options) {
  const auto snapshot = context.open(store::OpenMode::existing)->read();
  std::vector<Item> catalogue;
  for (auto& row : snapshot->all<Item>()) catalogue.push_back(std::move(row.record));
  const Date day = day_of(context, options);
  auto question = desk::question_of(catalogue, request_of(options), day);
  if (!question) throw WrongUse{question.error().sentence};
  if (const auto expected = expected_wear(context, options, day)) {
    question->expected_days = expected(*question);
  }
  const auto made = desk::check_issue(desk::read_for_issue(*snapshot, question->item), *question);
  if (!made) throw WrongUse{made.error().sentence};
  context.json ? print(json_of(*made)) : print_words(*made);
  return made->stops() ? done_with_findings : done;
}

void print_issue(const Context& context, const desk::IssueOutcome& outcome, int pages) {
  if (!context.json) {
    print_words(outcome.check);
    std::cout << (outcome.recorded ? "Handed over and recorded.\n" : "Nothing was recorded.\n");
    return;
  }
  Json document = json_of(outcome.check);
  document["recorded"] = outcome.recorded;
  document["units"] = Json::array();
  for (const auto& unit : outcome.units) {
    document["units"].push_back({{"lot", unit.lot}, {"serial", unit.serial}, {"copy", unit.copy}});
  }
  document["sheet_pages"] = pages == 0 ? Json(nullptr) : Json(pages);
  print(document);
}

int issue(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const Date today = context.today();
  const auto who = context.author("").who;
  const Date day = day_of(context, options);
  const auto outcome = desk::issue_part(*store, request_of(options), day, today, who,
                                        expected_wear(context, options, day));
  if (!outcome) throw WrongUse{outcome.error().sentence};
  int pages = 0;
  if (outcome->recorded && !options.sheet.empty()) {
    const desk::SheetOptions how{
        !options.no_name, options.letter ? exchange::PaperSize::letter : exchange::PaperSize::a4};
    const auto printed =
        desk::print_delivery_sheet(*store, outcome->units, options.sheet, today, how, who);
    if (!printed)
      throw WrongUse{"The part is recorded as handed over. " + printed.error().sentence};
    pages = *printed;
  }
  print_issue(context, *outcome, pages);
  return outcome->check.stops() ? done_with_findings : done;
}

void add_question(Command& command, Options& options) {
  auto& request = options.request;
  command.add_option("--patient", request.patient, "The patient's reference")->required();
  command.add_option("--side", options.side, "left or right")->required();
  command.add_option("--item", request.item, "The item's code (default: as scanned)");
  command.add_option("--quantity", request.quantity, "Pieces (default: 1)")->within(1, 10'000);
  command.add_option("--lot", request.lot, "The lot (default: first expiry, first out)");
  command.add_option("--serial", request.serial, "The serial number of the piece");
  command.add_option("--place", request.place, "Where it is taken from (default: any store)");
  command
      .add_option("--scan", request.scans,
                  "The label as scanned or typed, GS1 or HIBC; once for each barcode")
      ->repeatable();
  command.add_option("--on", options.on, "The day, YYYY-MM-DD (default: today)");
  command.add_flag(
      "--by-forecast", options.by_forecast,
      "Compare the use-by date with the forecast for this patient instead of the usual "
      "life of such parts; fits the clinic's history first");
}

}  // namespace

void add_issue(Command& app, Context& context) {
  auto* asks = app.add_subcommand("check-issue", "May this part be handed to this patient?");
  const auto asked = std::make_shared<Options>();
  add_question(*asks, *asked);
  asks->callback(
      [&context, asked] { context.run = [&context, asked] { return check(context, *asked); }; });
  auto* command = app.add_subcommand("issue", "Hand a part to a patient, after the checks");
  const auto options = std::make_shared<Options>();
  add_question(*command, *options);
  command->add_option("--override", options->request.override_by,
                      "The clinician who decides although a finding stops it");
  command->add_option("--because", options->request.override_because, "The clinician's reason");
  command->add_option("--sheet", options->sheet, "Write the delivery sheet to this PDF file");
  command->add_flag("--letter", options->letter, "On US Letter instead of A4");
  command->add_flag("--without-name", options->no_name, "Leave the patient's name off the sheet");
  command->callback([&context, options] {
    context.run = [&context, options] { return issue(context, *options); };
  });
}

}  // namespace sparewell::batch
