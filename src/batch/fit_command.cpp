#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/fit_words.hpp"
#include "desk/issue_words.hpp"
#include "desk/measuring.hpp"

namespace sparewell::batch {
namespace {

struct FitOptions {
  std::string patient;
  std::string side;
  std::string by;
  bool leaving = false;
};

struct MeasureOptions {
  desk::MeasuredLimb measured;
  std::string side;
  std::string on;
};

Json json_of(const std::optional<double>& number) {
  return number ? Json(*number) : Json(nullptr);
}

Json json_of(const std::optional<care::LimbTrend>& trend) {
  if (!trend) return nullptr;
  const auto [low, high] = trend->change_between();
  return {{"per", trend->preparatory() ? "ln week" : "year"},
          {"measurements", trend->readings().size()},
          {"change", trend->change()},
          {"change_low", low},
          {"change_high", high}};
}

Json json_of(const desk::FitPart& part, Date today) {
  const auto& check = part.check;
  const auto& predicted = part.predicted;
  Json words = Json::array();
  for (const auto& sentence : desk::fit_sentences(part, today)) words.push_back(sentence);
  return {{"patient_ref", part.patient.text},
          {"side", word(part.side)},
          {"item_code", part.item.code.text},
          {"in_use", part.units},
          {"size_min_cm", json_of(part.item.size_min_cm)},
          {"size_max_cm", json_of(part.item.size_max_cm)},
          {"size_at_cm", json_of(part.item.size_at_cm)},
          {"check", desk::fit_finding(check, part.item, part.side).key},
          {"circumference_cm", json_of(check.circumference_cm)},
          {"measured_on", batch::json_of(check.measured_on)},
          {"interpolated", check.interpolated},
          {"old", check.old},
          {"trend", json_of(part.trend)},
          {"by", batch::json_of(part.by)},
          {"foreseen_cm", predicted ? Json(predicted->circumference_cm) : Json()},
          {"foreseen_low_cm", predicted ? Json(predicted->low_cm) : Json()},
          {"foreseen_high_cm", predicted ? Json(predicted->high_cm) : Json()},
          {"chance_below", predicted ? Json(part.chance_below) : Json()},
          {"chance_above", predicted ? Json(part.chance_above) : Json()},
          {"chance_outside", predicted ? Json(part.chance_outside()) : Json()},
          {"likely_outside", batch::json_of(part.likely_outside)},
          {"next_item", part.next ? Json(part.next->text) : Json()},
          {"next_conflicts", part.next_conflicts},
          {"next_on_hand", part.next ? Json(part.next_on_hand) : Json()},
          {"words", std::move(words)}};
}

bool asks(const desk::FitPart& part) {
  return care::gravity(part.check) != care::Gravity::note || part.wants_next;
}

int print_patient(const Context& context, const desk::FitReport& report) {
  if (context.json) {
    Json parts = Json::array();
    for (const auto& part : report.parts) parts.push_back(json_of(part, report.today));
    Json socks = Json::array();
    for (const auto& found : report.socks) {
      socks.push_back({{"side", word(found.side)},
                       {"plies_before", found.sign.plies_before},
                       {"plies_lately", found.sign.plies_lately},
                       {"words", desk::sock_words(found)}});
    }
    print({{"patient_ref", report.patient.text},
           {"today", batch::json_of(report.today)},
           {"by", batch::json_of(report.by)},
           {"measured", report.measured},
           {"parts", std::move(parts)},
           {"sock_signs", std::move(socks)},
           {"caution", desk::fit_caution()}});
  } else {
    std::cout << desk::fit_text(report) << '\n';
  }
  return !report.socks.empty() || std::ranges::any_of(report.parts, asks) ? done_with_findings
                                                                          : done;
}

int print_leaving(const Context& context, const desk::LeavingParts& leaving, Date by, Date today) {
  const auto& parts = leaving.parts;
  if (context.json) {
    Json rows = Json::array();
    for (const auto& part : parts) {
      rows.push_back(json_of(part, today));
      rows.back()["outside_now"] = part.outside_now();
    }
    print({{"today", batch::json_of(today)},
           {"by", batch::json_of(by)},
           {"parts", std::move(rows)},
           {"not_known", leaving.not_known},
           {"caution", desk::fit_caution()}});
    return parts.empty() ? done : done_with_findings;
  }
  for (const auto& part : parts) {
    std::cout << fmt::format("{} {}\n  {}\n", part.patient.text, desk::fit_title(part),
                             desk::leaving_line(part, today));
  }
  if (parts.empty()) {
    std::cout << fmt::format(
        "No limb that was measured is outside the size of a part in use, or more likely than not "
        "by {}.\n",
        iso_text(by));
  }
  if (const auto words = desk::not_known_words(leaving); !words.empty()) std::cout << words << '\n';
  std::cout << desk::fit_caution() << '\n';
  return parts.empty() ? done : done_with_findings;
}

int run(const Context& context, const FitOptions& options) {
  const Date today = context.today();
  const Date by =
      options.by.empty() ? today + days{desk::fit_days} : date_option("--by", options.by);
  if (by < today) throw WrongUse{"--by: the day lies before today; give today or a later one."};
  if (options.leaving != options.patient.empty()) {
    throw WrongUse{"fit: give either --patient REF, or --leaving for all patients."};
  }
  const Clinic clinic = context.clinic_on(today);
  if (options.leaving) {
    return print_leaving(context, desk::leaving_parts(clinic, by, today), by, today);
  }
  const PatientRef patient{options.patient};
  if (ClinicIndex{clinic}.patient(patient) == nullptr) {
    throw WrongUse{fmt::format("There is no patient '{}'; check the reference.", options.patient)};
  }
  const auto side = options.side.empty() ? std::optional<Side>{} : parse_word<Side>(options.side);
  return print_patient(context, desk::fit_report(clinic, patient, side, by, today));
}

int measure(const Context& context, const MeasureOptions& options) {
  const Date today = context.today();
  auto measured = options.measured;
  measured.side = parse_word<Side>(options.side).value_or(Side::left);
  measured.on = options.on.empty() ? today : date_option("--on", options.on);
  const auto store = context.open(store::OpenMode::existing);
  const auto booked = desk::in_one_work(
      *store, context.author("a limb was measured"),
      [&](store::UnitOfWork& work) { return desk::record_measurement(work, measured, today); });
  if (!booked) throw WrongUse{booked.error().sentence};
  if (context.json) {
    print({{"patient_ref", measured.patient.text},
           {"side", word(measured.side)},
           {"at_cm", measured.at_cm},
           {"circumference_cm", measured.circumference_cm},
           {"measured_on", batch::json_of(measured.on)},
           {"words", booked->notes.front()}});
  } else {
    for (const auto& note : booked->notes) std::cout << note << '\n';
  }
  return done;
}

void add_measure(Command& app, Context& context) {
  auto* command = app.add_subcommand("measure", "Record the circumference of a residual limb");
  const auto options = std::make_shared<MeasureOptions>();
  command->add_option("--patient", options->measured.patient.text, "The patient's reference")
      ->required();
  command->add_option("--side", options->side, "left or right")
      ->required()
      ->one_of({"left", "right"});
  command->add_option("--at", options->measured.at_cm, "Height above the end of the limb, in cm")
      ->required();
  command->add_option("--circumference", options->measured.circumference_cm, "In cm")->required();
  command->add_option("--on", options->on, "The day of the measurement (default: today)");
  command->add_flag("--sure", options->measured.sure,
                    "A jump, or another value than one recorded for the day, is what was meant");
  command->callback([&context, options] {
    context.run = [&context, options] { return measure(context, *options); };
  });
}

}  // namespace

void add_fit(Command& app, Context& context) {
  auto* command = app.add_subcommand("fit", "Do the sizes fit, how do limbs change, until when");
  const auto options = std::make_shared<FitOptions>();
  command->add_option("--patient", options->patient, "The patient's reference");
  command->add_option("--side", options->side, "left or right; both when left out")
      ->one_of({"left", "right"});
  command->add_option("--by", options->by,
                      "A day to come, YYYY-MM-DD (default: half a year from today)");
  command->add_flag("--leaving", options->leaving,
                    "All patients whose limb is outside a size, or will more likely than not be");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
  add_measure(app, context);
}

}  // namespace sparewell::batch
