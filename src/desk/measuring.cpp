#include "desk/measuring.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <set>

#include <fmt/format.h>

#include "care/circumference.hpp"
#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr const char* ask_again = "ask again";
constexpr const char* record_it = "record it all the same";

std::string refusal_of(const MeasuredLimb& measured, Date today) {
  if (!(measured.circumference_cm > 0 && measured.circumference_cm <= most_circumference_cm)) {
    return say("A circumference of {:g} cm cannot be; write one above 0 and up to {:g} cm.",
               measured.circumference_cm, most_circumference_cm);
  }
  if (!(measured.at_cm >= 0 && measured.at_cm <= most_height_cm)) {
    return say(
        "A height of {:g} cm cannot be; write the height above the end of the limb, 0 to {:g} cm.",
        measured.at_cm, most_height_cm);
  }
  if (measured.on > today) {
    return say("{} is still to come; write the day on which the limb was measured.",
               date_words(measured.on));
  }
  return "";
}

std::vector<store::Row<Measurement>> of_side(const store::Snapshot& snapshot,
                                             const MeasuredLimb& measured) {
  auto rows = snapshot.all<Measurement>();
  std::erase_if(rows, [&](const store::Row<Measurement>& row) {
    return row.record.patient != measured.patient || row.record.side != measured.side;
  });
  return rows;
}

/// Empty where the circumference may be right.
std::string jump_of(const std::vector<store::Row<Measurement>>& rows,
                    const MeasuredLimb& measured) {
  std::vector<Measurement> before;
  for (const auto& row : rows) {
    if (row.record.measured_on < measured.on) before.push_back(row.record);
  }
  const auto readings =
      care::readings_at(before, measured.patient, measured.side, measured.at_cm, measured.on);
  if (readings.empty()) return "";
  const auto& last = readings.back();
  const double change = measured.circumference_cm / last.circumference_cm - 1;
  if (std::abs(change) <= greatest_jump) return "";
  return say(
      "{:g} cm is {:.0f} % {} than the {:.1f} cm at {:g} cm on {}; measure again, and say that you "
      "are sure if it is so.",
      measured.circumference_cm, std::abs(change) * 100, change > 0 ? "more" : "less",
      last.circumference_cm, measured.at_cm, date_words(last.day));
}

std::string said(const MeasuredLimb& measured, const char* done) {
  return say("{} {}, {:g} cm at {:g} cm on {}: {}.", measured.patient.text, word(measured.side),
             measured.circumference_cm, measured.at_cm, date_words(measured.on), done);
}

/// A number with a point or a comma, and nothing else.
std::optional<double> read_number(std::string text) {
  std::ranges::replace(text, ',', '.');
  double number = 0;
  const char* end = text.data() + text.size();
  const auto [read, error] = std::from_chars(text.data(), end, number);
  if (error != std::errc{} || read != end || !std::isfinite(number)) return std::nullopt;
  return number;
}

Expected<Booked> book_answers(store::UnitOfWork& work, const PatientRef& patient, Date today,
                              const std::vector<std::string>& given) {
  const auto side = parse_word<Side>(given[0]);
  if (!side) return refuse(say("Side: '{}' is not left or right.", given[0]));
  const auto at_cm = read_number(given[1]);
  if (!at_cm) {
    return refuse(say("Height: '{}' is not a number of cm, such as 4.", given[1]));
  }
  const auto circumference = read_number(given[2]);
  if (!circumference) {
    return refuse(say("Circumference: '{}' is not a number of cm, such as 26.4.", given[2]));
  }
  const auto on = parse_iso_date(given[3]);
  if (!on) {
    return refuse(say("Day: '{}' is not a day; write it as {}.", given[3], iso_text(today)));
  }
  return record_measurement(
      work, {patient, *side, *at_cm, *circumference, *on, given[4] == record_it}, today);
}

/// Heights at which the sizes of what the patient wears are stated, and at which they were
/// measured.
std::vector<std::string> heights_for(const Day& day, const PatientRef& patient) {
  std::set<double> heights;
  for (const auto position : day.units_of(patient)) {
    const Unit& unit = day.clinic().units[position];
    const Item* item = day.index().item(unit.item);
    if (unit.in_use_on(day.today()) && item != nullptr && item->size_at_cm) {
      heights.insert(*item->size_at_cm);
    }
  }
  for (const Measurement& each : day.clinic().measurements) {
    if (each.patient == patient) heights.insert(each.at_cm);
  }
  std::vector<std::string> made;
  made.reserve(heights.size());
  for (const double height : heights) made.push_back(fmt::format("{:g}", height));
  return made;
}

std::string first_side(const Day& day, const PatientRef& patient) {
  for (const Prosthesis& each : day.clinic().prostheses) {
    if (each.patient == patient && !each.ended_on) return std::string{word(each.side)};
  }
  return std::string{word(Side::left)};
}

}  // namespace

Expected<Booked> record_measurement(store::UnitOfWork& work, const MeasuredLimb& measured,
                                    Date today) {
  if (!work.patient(measured.patient)) {
    return refuse(say("There is no patient '{}'; check the reference.", measured.patient.text));
  }
  if (auto refusal = refusal_of(measured, today); !refusal.empty()) return refuse(refusal);
  const auto rows = of_side(work, measured);
  const auto same = std::ranges::find_if(rows, [&](const store::Row<Measurement>& row) {
    return row.record.measured_on == measured.on && row.record.at_cm == measured.at_cm;
  });
  const Measurement record{measured.patient, measured.side, measured.on, measured.at_cm,
                           measured.circumference_cm};
  Booked made;
  if (same != rows.end() && same->record == record) {
    made.notes.push_back(said(measured, "recorded already"));
    return made;
  }
  if (same != rows.end() && !measured.sure) {
    return refuse(
        say("For that day {:g} cm are recorded at {:g} cm; say that you are sure to correct them.",
            same->record.circumference_cm, measured.at_cm));
  }
  if (!measured.sure) {
    if (auto jump = jump_of(rows, measured); !jump.empty()) return refuse(jump);
  }
  if (same != rows.end()) {
    work.put_instead(same->id, record);
    made.notes.push_back(said(measured, "corrected"));
  } else {
    work.put(record);
    made.notes.push_back(said(measured, "recorded"));
  }
  return made;
}

StockForm measurement_form(const Day& day, const PatientRef& patient) {
  StockForm form{said("Record a measurement"), {}, {}, said("&Record"), {},
                 said("a limb was measured")};
  form.intro = say(
      "For {}. Measure at the heights at which the sizes are stated, at the same time of the day "
      "and "
      "as long after taking the prosthesis off as the last time.",
      patient_words(day, patient));
  const auto heights = heights_for(day, patient);
  form.fields = {
      {said("&Side"), first_side(day, patient), said("Which limb"), {"left", "right"}, true},
      {said("&Height, cm"), heights.empty() ? "4" : heights.front(),
       said("Above the end of the limb"), heights},
      {said("&Circumference, cm"), "", said("Such as 26.4")},
      {said("&Measured on"), iso_text(day.today()), said("The day, such as 2026-11-25")},
      {said("If it &differs much"),
       ask_again,
       said("From the last one by more than 20 %, or from one of the same day"),
       {ask_again, record_it},
       true}};
  form.book = [patient, today = day.today()](store::UnitOfWork& work,
                                             const std::vector<std::string>& given) {
    return book_answers(work, patient, today, given);
  };
  return form;
}

}  // namespace sparewell::desk
