#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/patient_card.hpp"
#include "desk/reaction_log.hpp"
#include "desk/reaction_record.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string patient;
  std::string side;
  std::string began;
  std::string ended;
  std::string signs;
  std::string note;
};

Json json_of(const Reaction& reaction) {
  return {{"patient_ref", reaction.patient.text},
          {"side", reaction.side ? Json(word(*reaction.side)) : Json(nullptr)},
          {"began_on", batch::json_of(reaction.began_on)},
          {"ended_on", batch::json_of(reaction.ended_on)},
          {"signs", reaction.signs},
          {"note", reaction.note}};
}

Json json_of(const desk::LogEntry& entry) {
  Json worn = Json::array();
  for (const auto& part : entry.worn) {
    worn.push_back({{"side", word(part.side)},
                    {"item_code", part.item.text},
                    {"since", batch::json_of(part.since)},
                    {"ended_on", batch::json_of(part.ended_on)},
                    {"ended_because_of_reaction", part.ended_for_it}});
  }
  return {{"began_on", batch::json_of(entry.day)},
          {"side", entry.side ? Json(word(*entry.side)) : Json(nullptr)},
          {"recorded", entry.recorded ? json_of(*entry.recorded) : Json(nullptr)},
          {"worn", std::move(worn)}};
}

/// Writes in one unit of work and tells what was written.
template <class Write>
int write(const Context& context, const std::string& why, Write decide) {
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(context.author(why));
  const Expected<Reaction> written = decide(*work);
  if (!written) throw WrongUse{written.error().sentence};
  work->commit();
  if (context.json) {
    print(json_of(*written));
  } else {
    std::cout << fmt::format("{}: {}.\n", written->patient.text, desk::reaction_words(*written));
  }
  return done;
}

int add(const Context& context, const Options& options) {
  Reaction reaction;
  reaction.patient.text = options.patient;
  if (!options.side.empty()) reaction.side = parse_word<Side>(options.side);
  reaction.began_on = date_option("--began", options.began);
  if (!options.ended.empty()) reaction.ended_on = date_option("--ended", options.ended);
  reaction.signs = desk::signs_in(options.signs);
  reaction.note = options.note;
  return write(context, "a reaction was recorded", [&](store::UnitOfWork& work) {
    return desk::record_reaction(work, reaction, context.today());
  });
}

int end(const Context& context, const Options& options) {
  desk::ReactionChoice choice;
  choice.patient = options.patient;
  if (!options.side.empty()) choice.side = parse_word<Side>(options.side);
  if (!options.began.empty()) choice.began_on = date_option("--began", options.began);
  const auto last = options.ended.empty() ? context.today() : date_option("--ended", options.ended);
  return write(context, "the end of a reaction was recorded", [&](store::UnitOfWork& work) {
    return desk::end_reaction(work, choice, last, context.today());
  });
}

int list(const Context& context, const std::string& patient) {
  const auto clinic = context.clinic_on(context.today());
  if (ClinicIndex{clinic}.patient({patient}) == nullptr) {
    throw WrongUse{fmt::format("There is no patient '{}'; check the reference.", patient)};
  }
  const auto log = desk::reaction_log(clinic, {patient}, context.today());
  if (context.json) {
    Json rows = Json::array();
    for (const auto& entry : log) rows.push_back(json_of(entry));
    print({{"patient_ref", patient}, {"reactions", std::move(rows)}});
    return done;
  }
  for (const auto& entry : log) {
    std::cout << desk::entry_words(entry) << '\n';
    for (const auto& part : entry.worn) {
      std::cout << fmt::format("  {}: {}\n", word(part.side), desk::worn_words(part, entry.day));
    }
    if (entry.worn.empty()) std::cout << "  No part is recorded as worn on the skin then.\n";
  }
  if (log.empty()) std::cout << "No reaction is recorded, which says nothing about the patient.\n";
  std::cout << desk::care_caution() << '\n';
  return done;
}

void add_side(Command& command, Options& options, const std::string& help) {
  command.add_option("--side", options.side, help)->one_of({"left", "right"});
}

}  // namespace

void add_reaction(Command& app, Context& context) {
  auto* command = app.add_subcommand("reaction", "Skin reactions, beside what was worn");
  command->require_subcommand();
  const auto options = std::make_shared<Options>();
  auto* adds = command->add_subcommand("add", "Record a reaction");
  adds->add_option("--patient", options->patient, "The patient's reference")->required();
  adds->add_option("--began", options->began, "The day on which it began, YYYY-MM-DD")->required();
  adds->add_option("--signs", options->signs,
                   "itching, redness, blisters, swelling, rash, or your own words, with commas")
      ->required();
  adds->add_option("--ended", options->ended, "Its last day; without it the reaction lasts");
  adds->add_option("--note", options->note, "Anything else");
  add_side(*adds, *options, "left or right (default: not of one side)");
  adds->callback([&context, options] {
    context.run = [&context, options] { return add(context, *options); };
  });
  auto* lists = command->add_subcommand("list", "The patient's reactions, and what was worn then");
  lists->add_option("--patient", options->patient, "The patient's reference")->required();
  lists->callback([&context, options] {
    context.run = [&context, options] { return list(context, options->patient); };
  });
  auto* ends = command->add_subcommand("end", "Record the last day of a reaction");
  ends->add_option("--patient", options->patient, "The patient's reference")->required();
  ends->add_option("--ended", options->ended, "Its last day, YYYY-MM-DD (default: today)");
  ends->add_option("--began", options->began,
                   "The day on which it began (default: the one that lasts)");
  add_side(*ends, *options, "Of several reactions, that of one side");
  ends->callback([&context, options] {
    context.run = [&context, options] { return end(context, *options); };
  });
}

}  // namespace sparewell::batch
