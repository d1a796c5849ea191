#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/part_words.hpp"
#include "desk/proof_of_delivery.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::UnitEnding ending;
  std::string side;
  std::string reason;
  std::string on;
  std::string signed_on;
};

Json json_of(const Unit& unit) {
  return {{"patient_ref", unit.patient.text},
          {"side", word(unit.side)},
          {"item_code", unit.item.text},
          {"lot", unit.lot},
          {"serial", unit.serial},
          {"issued_on", batch::json_of(unit.issued_on)},
          {"ended_on", batch::json_of(unit.ended_on)},
          {"end_reason", unit.end_reason ? Json(word(*unit.end_reason)) : Json(nullptr)}};
}

desk::UnitChoice choice_of(const Options& options) {
  auto choice = options.ending.unit;
  if (options.side.empty()) return choice;
  choice.side = parse_word<Side>(options.side);
  if (!choice.side) {
    throw WrongUse{fmt::format("--side '{}' is not known; write left or right.", options.side)};
  }
  return choice;
}

int end(const Context& context, const Options& options) {
  auto ending = options.ending;
  const Date today = context.today();
  ending.unit = choice_of(options);
  ending.on = options.on.empty() ? today : date_option("--on", options.on);
  const auto reason = parse_word<EndReason>(options.reason);
  if (!reason && !ending.mistake) {
    throw WrongUse{fmt::format("Say why it ended with --reason: {}.", allowed_words<EndReason>())};
  }
  ending.reason = reason.value_or(EndReason::returned);
  const auto store = context.open(store::OpenMode::existing);
  const auto ended = desk::end_unit(*store, ending, today, context.author("").who);
  if (!ended) throw WrongUse{ended.error().sentence};
  const auto place = ended->movement ? ended->movement->place : std::string{};
  if (context.json) {
    Json document = json_of(ended->unit);
    document["back_at"] = ended->movement ? Json(place) : Json(nullptr);
    print(document);
    return done;
  }
  std::cout << fmt::format("{} ({}) of {} ended on {}: {}.\n", ended->unit.item.text,
                           desk::lot_words(ended->unit), ended->unit.patient.text,
                           iso_text(*ended->unit.ended_on), word(*ended->unit.end_reason));
  if (!place.empty()) {
    std::cout << fmt::format("The piece is at {}. {}\n", place, desk::hygiene_words());
  }
  return done;
}

int delivered(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const auto units =
      desk::mark_delivered(*store, choice_of(options), date_option("--signed", options.signed_on),
                           context.today(), context.author("").who);
  if (!units) throw WrongUse{units.error().sentence};
  Json rows = Json::array();
  for (const auto& unit : *units) {
    rows.push_back(json_of(unit));
    if (!context.json) {
      std::cout << fmt::format("{} ({}), issued {}: signed {}.\n", unit.item.text,
                               desk::lot_words(unit), iso_text(unit.issued_on), options.signed_on);
    }
  }
  if (context.json) print({{"signed_on", options.signed_on}, {"units", std::move(rows)}});
  return done;
}

void add_choice(CLI::App& command, Options& options) {
  auto& unit = options.ending.unit;
  command.add_option("--patient", unit.patient, "The patient's reference")->required();
  command.add_option("--side", options.side, "left or right (default: either)");
  command.add_option("--item", unit.item, "The item's code");
  command.add_option("--lot", unit.lot, "The lot");
  command.add_option("--serial", unit.serial, "The serial number");
}

}  // namespace

void add_unit(CLI::App& app, Context& context) {
  auto* ends = app.add_subcommand("end-unit", "A part in use ends, or comes back");
  const auto ending = std::make_shared<Options>();
  add_choice(*ends, *ending);
  ends->add_option("--reason", ending->reason, "Why it ended: hole, worn, lost, resized ...");
  ends->add_option("--on", ending->on, "The day, YYYY-MM-DD (default: today)");
  ends->add_flag("--back-to-shelf", ending->ending.back_to_shelf,
                 "The clinic has it back; it goes to quarantine unless it is unopened");
  ends->add_flag("--unopened", ending->ending.unopened, "It is in its sealed package");
  ends->add_flag("--mistake", ending->ending.mistake,
                 "It was issued by mistake: reverse that, as of the day of issue");
  ends->callback(
      [&context, ending] { context.run = [&context, ending] { return end(context, *ending); }; });
  auto* marks = app.add_subcommand("delivered", "Record the day on a signed delivery sheet");
  const auto options = std::make_shared<Options>();
  add_choice(*marks, *options);
  marks->add_option("--signed", options->signed_on, "The day it was signed, YYYY-MM-DD")
      ->required();
  marks->callback([&context, options] {
    context.run = [&context, options] { return delivered(context, *options); };
  });
}

}  // namespace sparewell::batch
