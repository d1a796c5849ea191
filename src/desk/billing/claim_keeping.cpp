#include "desk/billing/claim_keeping.hpp"

#include <algorithm>
#include <set>

#include "clinic/say.hpp"
#include "desk/import/natural_keys.hpp"
#include "exchange/text.hpp"

namespace sparewell::desk {
namespace {

bool agrees(const std::string& a, const std::string& b) {
  return a.empty() || b.empty() || a == b;
}

/// What a modifier says beyond the side.
std::vector<std::string> without_side(std::vector<std::string> modifiers) {
  std::erase_if(modifiers, [](const std::string& each) { return each == "RT" || each == "LT"; });
  return modifiers;
}

bool is_same_line(const ClaimLine& a, const ClaimLine& b) {
  const bool sides = !a.side || !b.side || a.side == b.side;
  const bool modifiers = a.modifiers.empty() || b.modifiers.empty() ||
                         without_side(a.modifiers) == without_side(b.modifiers);
  return sides && modifiers && a.submission == b.submission && a.quantity == b.quantity &&
         a.charge == b.charge && agrees(a.payer, b.payer) && agrees(a.line_control, b.line_control);
}

/// How much speaks for a stored line among several that do not contradict.
int likeness(const ClaimLine& stored, const ClaimLine& line) {
  return (stored.line_control == line.line_control ? 4 : 0) + (stored.side == line.side ? 2 : 0) +
         (stored.modifiers == line.modifiers ? 1 : 0);
}

std::string service_key(const ClaimLine& line) {
  return joined_key({line.claim_ref, line.patient.text, iso_text(line.service_date), line.code});
}

void take_if_blank(std::string& to, const std::string& from) {
  if (to.empty()) to = from;
}

/// Equal but for the patient, who may have become known since, and the position.
bool says_the_same(RemittanceLine a, const RemittanceLine& b) {
  a.patient = b.patient;
  a.position = b.position;
  return a == b;
}

}  // namespace

ClaimKeeping::ClaimKeeping(store::UnitOfWork& work) : work_{work} {
  for (const auto& row : work.all<ClaimLine>()) {
    stored_[service_key(row.record)].push_back({row.id, row.record});
    note(row.record);
  }
  for (const auto& row : work.all<RemittanceLine>()) {
    const auto& line = row.record;
    if (!line.payer_claim.empty() && !line.claim_ref.empty()) {
      claim_of_payer_number_.emplace(line.payer_claim, line.claim_ref);
    }
  }
}

void ClaimKeeping::note(const ClaimLine& line) {
  claims_.insert(line.claim_ref);
  if (line.submission == Submission::original) originals_.insert(line.claim_ref);
}

std::string ClaimKeeping::replaced_claim(const ClaimLine& line) const {
  if (line.replaces.empty() || claims_.contains(line.replaces)) return line.replaces;
  const auto known = claim_of_payer_number_.find(line.replaces);
  if (known == claim_of_payer_number_.end()) {
    // The payer's number of a claim that bears our same reference.
    return originals_.contains(line.claim_ref) ? std::string{} : line.replaces;
  }
  return known->second == line.claim_ref ? std::string{} : known->second;
}

Kept ClaimKeeping::keep(ClaimLine line) {
  line.replaces = replaced_claim(line);
  auto& alike = stored_[service_key(line)];
  Stored* same = nullptr;
  bool differs = false;
  for (auto& each : alike) {
    if (each.used) continue;
    differs = differs || (each.line.submission == line.submission && each.line.side == line.side);
    if (!is_same_line(each.line, line)) continue;
    if (same == nullptr || likeness(each.line, line) > likeness(same->line, line)) same = &each;
  }
  if (same == nullptr) {
    beside_ += differs ? 1 : 0;
    line.copy = free_copy(alike, line);
    const auto id = work_.put(line);
    note(line);
    alike.push_back({id, std::move(line), true});
    return Kept::added;
  }
  same->used = true;
  const auto& stored = same->line;
  if (stored.side) line.side = stored.side;
  if (!stored.modifiers.empty()) line.modifiers = stored.modifiers;
  take_if_blank(line.payer, stored.payer);
  take_if_blank(line.line_control, stored.line_control);
  take_if_blank(line.replaces, stored.replaces);
  line.copy = stored.copy;
  if (line == stored) return Kept::unchanged;
  // A side or modifiers filled in may make it alike to another line.
  if (natural_key(line) != natural_key(stored)) line.copy = free_copy(alike, line);
  work_.put_instead(same->id, line);
  same->line = std::move(line);
  return Kept::changed;
}

int ClaimKeeping::free_copy(const std::vector<Stored>& alike, const ClaimLine& line) {
  int last = 0;
  for (const auto& each : alike) {
    if (natural_key(each.line) == natural_key(line)) last = std::max(last, each.line.copy);
  }
  return last + 1;
}

PaymentKeeping::PaymentKeeping(store::UnitOfWork& work) : work_{work} {
  for (auto& row : work.all<Remittance>()) {
    auto& payment = payments_[{row.record.payer, row.record.reference}];
    payment.id = row.id;
    payment.remittance = std::move(row.record);
  }
  for (auto& row : work.all<RemittanceLine>()) {
    const Key key{row.record.payer, row.record.reference};
    const auto position = row.record.position;
    payments_[key].lines.emplace(position, std::move(row));
  }
}

void PaymentKeeping::add(Payment& payment, const RemittanceLine& line) {
  const auto id = work_.put(line);
  payment.lines.emplace(line.position, store::Row<RemittanceLine>{id, line});
}

Kept PaymentKeeping::fill_in(store::Row<RemittanceLine>& stored, const RemittanceLine& line) {
  if (!stored.record.patient.empty() || line.patient.empty()) return Kept::unchanged;
  stored.record.patient = line.patient;
  work_.put_instead(stored.id, stored.record);
  return Kept::changed;
}

PaymentKeeping::Result PaymentKeeping::keep_whole(const Remittance& remittance,
                                                  std::vector<RemittanceLine> lines) {
  Result result;
  const auto known = payments_.find({remittance.payer, remittance.reference});
  if (known == payments_.end()) {
    auto& payment = payments_[{remittance.payer, remittance.reference}];
    payment.id = work_.put(remittance);
    payment.remittance = remittance;
    for (const auto& line : lines) add(payment, line);
    result.added = static_cast<int>(lines.size());
    return result;
  }
  auto& payment = known->second;
  const auto stored_alike = [&](const RemittanceLine& line) {
    const auto stored = payment.lines.find(line.position);
    return stored != payment.lines.end() && says_the_same(line, stored->second.record);
  };
  if (lines.size() != payment.lines.size() || remittance.paid_on != payment.remittance.paid_on ||
      remittance.total != payment.remittance.total || !std::ranges::all_of(lines, stored_alike)) {
    result.refusal =
        say("The payment {} is stored with other content, read from {}; nothing of it was changed.",
            exchange::excerpt(remittance.reference), payment.remittance.source);
    return result;
  }
  for (const auto& line : lines) {
    ++(fill_in(payment.lines.at(line.position), line) == Kept::changed ? result.changed
                                                                       : result.unchanged);
  }
  return result;
}

PaymentKeeping::Result PaymentKeeping::keep_lines(const Remittance& remittance,
                                                  std::vector<RemittanceLine> lines,
                                                  bool by_position) {
  Result result;
  const auto [known, is_new] =
      payments_.try_emplace({remittance.payer, remittance.reference}, Payment{});
  auto& payment = known->second;
  if (is_new) {
    payment.id = work_.put(remittance);
    payment.remittance = remittance;
  } else if (payment.remittance.paid_on != remittance.paid_on) {
    result.refusal = say("The payment {} is stored as of {}, not of {}; nothing of it was changed.",
                         exchange::excerpt(remittance.reference),
                         iso_text(payment.remittance.paid_on), iso_text(remittance.paid_on));
    return result;
  }
  std::set<int> used;
  for (auto& line : lines) {
    auto stored = std::ranges::find_if(payment.lines, [&](const auto& each) {
      return !used.contains(each.first) && (!by_position || each.first == line.position) &&
             line.claim_ref == each.second.record.claim_ref &&
             says_the_same(line, each.second.record);
    });
    if (stored != payment.lines.end()) {
      used.insert(stored->first);
      ++(fill_in(stored->second, line) == Kept::changed ? result.changed : result.unchanged);
      continue;
    }
    while (payment.lines.contains(line.position)) {
      line.position = payment.lines.rbegin()->first + 1;
    }
    used.insert(line.position);
    add(payment, line);
    ++result.added;
  }
  if (is_new || result.added == 0) return result;
  auto& total = payment.remittance.total;
  total.minor = 0;
  for (const auto& [position, row] : payment.lines) total.minor += row.record.paid.minor;
  work_.put_instead(payment.id, payment.remittance);
  return result;
}

}  // namespace sparewell::desk
