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
  std::string issued;
  std::vector<int> numbers;
  bool list = false;
  std::string file;
  bool letter = false;
  bool no_name = false;
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
  if (!options.issued.empty()) choice.issued_on = date_option("--issued", options.issued);
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

/// With the numbers that --unit takes.
int list(const Context& context, const std::vector<desk::IssuedParts>& parts) {
  Json rows = Json::array();
  for (std::size_t i = 0; i < parts.size(); ++i) {
    rows.push_back(json_of(parts[i].units.front()));
    rows.back()["number"] = i + 1;
    rows.back()["quantity"] = parts[i].units.size();
    rows.back()["printed_on"] = batch::json_of(parts[i].printed_on);
    rows.back()["signed_on"] = batch::json_of(parts[i].signed_on);
    if (!context.json) std::cout << fmt::format("{:>3}  {}\n", i + 1, desk::issued_words(parts[i]));
  }
  if (context.json) {
    print({{"parts", std::move(rows)}});
  } else if (parts.empty()) {
    std::cout << "There are no such parts.\n";
  }
  return done;
}

int sheet(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const auto choice = choice_of(options);
  if (options.list) return list(context, desk::issued_parts(*store->read(), choice));
  if (options.file.empty()) throw WrongUse{"Say with --out where the delivery sheet is written."};
  const desk::SheetOptions how{
      !options.no_name, options.letter ? exchange::PaperSize::letter : exchange::PaperSize::a4};
  const auto pages = desk::print_sheet_again(*store, choice, options.numbers, options.file,
                                             context.today(), how, context.author("").who);
  if (!pages) throw WrongUse{pages.error().sentence};
  if (context.json) {
    print({{"file", options.file}, {"pages", *pages}});
  } else {
    std::cout << fmt::format("Wrote the delivery sheet: {}\n", options.file);
  }
  return done;
}

int delivered(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const auto choice = choice_of(options);
  if (options.list) return list(context, desk::unsigned_parts(*store->read(), choice));
  if (options.signed_on.empty()) {
    throw WrongUse{"Say with --signed on which day the sheet was signed."};
  }
  const auto units = desk::mark_delivered(*store, choice, options.numbers,
                                          date_option("--signed", options.signed_on),
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

void add_choice(Command& command, Options& options) {
  auto& unit = options.ending.unit;
  command.add_option("--patient", unit.patient, "The patient's reference")->required();
  command.add_option("--side", options.side, "left or right (default: either)");
  command.add_option("--item", unit.item, "The item's code");
  command.add_option("--lot", unit.lot, "The lot");
  command.add_option("--serial", unit.serial, "The serial number");
  command.add_option("--issued", options.issued, "The day on which it was issued, YYYY-MM-DD");
}

void add_numbers(Command& command, Options& options) {
  command
      .add_option("--unit", options.numbers,
                  "Only these of the parts that answer, by the numbers of --list: 1,3")
      ->comma_separated()
      ->within(1, 1'000'000);
  command.add_flag("--list", options.list, "List the parts that answer, with their numbers");
}

void add_sheet(Command& app, Context& context) {
  auto* command =
      app.add_subcommand("delivery-sheet", "Write the delivery sheet of parts handed over earlier");
  const auto options = std::make_shared<Options>();
  add_choice(*command, *options);
  add_numbers(*command, *options);
  command->add_option("--out", options->file, "The PDF file to write");
  command->add_flag("--letter", options->letter, "On US Letter instead of A4");
  command->add_flag("--without-name", options->no_name, "Leave the patient's name off the sheet");
  command->callback([&context, options] {
    context.run = [&context, options] { return sheet(context, *options); };
  });
}

}  // namespace

void add_unit(Command& app, Context& context) {
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
  add_sheet(app, context);
  auto* marks = app.add_subcommand("delivered", "Record the day on a signed delivery sheet");
  const auto options = std::make_shared<Options>();
  add_choice(*marks, *options);
  add_numbers(*marks, *options);
  marks->add_option("--signed", options->signed_on, "The day it was signed, YYYY-MM-DD");
  marks->callback([&context, options] {
    context.run = [&context, options] { return delivered(context, *options); };
  });
}

}  // namespace sparewell::batch
