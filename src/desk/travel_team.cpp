#include "desk/travel_team.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/issue_words.hpp"
#include "desk/travel_parts.hpp"
#include "desk/travel_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// Puts together what may be shared.
void find_shared(TeamCheck& team, const Clinic& clinic) {
  std::map<std::string, std::vector<SharedSpares::User>> users;
  for (std::size_t m = 0; m < team.members.size(); ++m) {
    const TravelCheck& member = team.members[m];
    for (std::size_t p = 0; p < member.parts.size(); ++p) {
      const TravelPart& part = member.parts[p];
      if (what_stops_spares(part, 1, member.request, clinic).empty()) {
        users[part.item.text].push_back({m, p});
      }
    }
  }
  for (auto& [item, of] : users) {
    if (of.size() < 2) continue;
    SharedSpares shared;
    std::vector<supply::Pmf> beyond;
    for (const auto& user : of) {
      beyond.push_back(beyond_carried(team.members[user.member].parts[user.part].need));
    }
    shared.part = team.members[of.front().member].parts[of.front().part];
    shared.part.need = {};
    shared.part.need.failures = supply::convolve_all(std::move(beyond));
    shared.users = std::move(of);
    team.shared.push_back(std::move(shared));
  }
}

bool is_shared(const TeamCheck& team, std::size_t member, std::size_t part) {
  return std::ranges::any_of(team.shared, [&](const SharedSpares& each) {
    return std::ranges::any_of(each.users, [&](const SharedSpares::User& user) {
      return user.member == member && user.part == part;
    });
  });
}

/// A part whose spares are chosen, and for whom.
struct Chosen {
  TravelPart* part = nullptr;
  TravelCheck* member = nullptr;
};

std::vector<Chosen> to_choose(TeamCheck& team) {
  std::vector<Chosen> made;
  for (std::size_t m = 0; m < team.members.size(); ++m) {
    for (std::size_t p = 0; p < team.members[m].parts.size(); ++p) {
      if (!is_shared(team, m, p)) made.push_back({&team.members[m].parts[p], &team.members[m]});
    }
  }
  for (auto& each : team.shared) {
    made.push_back({&each.part, &team.members[each.users.front().member]});
  }
  return made;
}

std::string refusal_of(const std::vector<std::string>& patients) {
  if (patients.size() < 2) return said("Name two patients or more who travel together.");
  std::set<std::string> seen;
  for (const auto& patient : patients) {
    if (!seen.insert(patient).second) {
      return say("{} is named twice; name each patient once.", patient);
    }
  }
  return {};
}

/// Chances of each member with their own spares alone.
void set_chances(TravelCheck& member) {
  std::vector<care::SpareNeed> needs;
  std::vector<int> spares;
  for (const TravelPart& part : member.parts) {
    needs.push_back(part.need);
    spares.push_back(part.spares);
  }
  member.with_spares = care::assurance(needs, spares);
  member.without_spares = care::assurance(needs, std::vector<int>(needs.size(), 0));
  member.reached = member.unknown.empty() && member.with_spares >= member.request.wanted;
}

}  // namespace

supply::Pmf beyond_carried(const care::SpareNeed& need) {
  const auto& mass = need.failures.mass();
  const auto carried = static_cast<std::size_t>(need.carried);
  std::vector<double> beyond{0.0};
  for (std::size_t n = 0; n < mass.size(); ++n) {
    if (n <= carried) {
      beyond[0] += mass[n];
    } else {
      beyond.push_back(mass[n]);
    }
  }
  return supply::Pmf{std::move(beyond)};
}

Expected<TeamCheck> check_team(const Assessment& assessment, const TravelRequest& request,
                               const std::vector<std::string>& patients) {
  if (auto words = refusal_of(patients); !words.empty()) return refuse(std::move(words));
  const Clinic& clinic = assessment.clinic;
  TeamCheck team;
  for (const auto& patient : patients) {
    auto of = request;
    of.patient = patient;
    auto gathered = gather_travel(assessment, of);
    if (!gathered) return tl::unexpected{gathered.error()};
    team.members.push_back(std::move(*gathered));
  }
  find_shared(team, clinic);
  const auto chosen = to_choose(team);
  std::vector<TravelPart*> parts;
  for (const Chosen& each : chosen) parts.push_back(each.part);
  team.by_pieces = set_travel_costs(parts, ClinicIndex{clinic}, request.by_pieces);
  std::vector<care::SpareNeed> needs;
  for (const TravelPart* part : parts) needs.push_back(part->need);
  const auto kit = care::cheapest_kit(needs, request.wanted);
  team.without_spares = care::assurance(needs, std::vector<int>(needs.size(), 0));
  team.with_spares = kit.assurance;
  team.reached = kit.reached;
  std::vector<StockLevel> shelf = clinic.shelf;
  const supply::LeadTimes leads{clinic};
  for (std::size_t i = 0; i < chosen.size(); ++i) {
    TravelPart& part = *chosen[i].part;
    part.spares = kit.spares[i];
    if (part.spares == 0) continue;
    const TravelCheck& member = *chosen[i].member;
    find_travel_spares(part, member, clinic, shelf, leads);
    part.stops = what_stops_spares(part, part.spares, member.request, clinic);
    if (!part.stops.empty()) team.reached = false;
  }
  for (TravelCheck& member : team.members) {
    set_chances(member);
    team.reached = team.reached && member.unknown.empty();
  }
  return team;
}

std::string team_verdict(const TeamCheck& team) {
  const TravelCheck& first = team.members.front();
  int own = 0;
  for (const auto& member : team.members) {
    for (const auto& part : member.parts) own += part.spares;
  }
  int shared = 0;
  for (const auto& each : team.shared) shared += each.part.spares;
  auto words =
      say("From {} until {} nobody of {} patients is left without with {} chance without spares, "
          "and with {} with {} of their own and {} that they share; wanted are {}.",
          date_words(first.request.departure), date_words(first.last_day), team.members.size(),
          assurance_words(team.without_spares), assurance_words(team.with_spares),
          count_words(own, "spare", "spares"), number_words(shared),
          assurance_words(first.request.wanted));
  if (!team.reached) {
    words += said(
        " Something is not known, a check stops a spare, or the wanted cannot be reached: see "
        "below.");
  }
  return words;
}

std::string shared_words(const TeamCheck& team, std::size_t shared, Date today) {
  const SharedSpares& each = team.shared.at(shared);
  std::vector<std::string> users;
  for (const auto& user : each.users) {
    const auto& member = team.members[user.member];
    users.push_back(
        fmt::format("{} ({})", member.request.patient, shown_word(member.parts[user.part].side)));
  }
  auto words = each.part.spares == 0
                   ? say("Shared by {}: none of {}", list_words(users), each.part.item.text)
                   : say("Shared by {}: {} of {}", list_words(users),
                         number_words(each.part.spares), each.part.item.text);
  words += say(", with which all of them last with {} chance.",
               assurance_words(care::assurance(each.part.need, each.part.spares)));
  return words + travel_source_words(each.part, today);
}

std::string team_text(const TeamCheck& team, Date today) {
  auto text = team_verdict(team) + "\n";
  for (std::size_t m = 0; m < team.members.size(); ++m) {
    const TravelCheck& member = team.members[m];
    text += fmt::format("\n{}\n", member.request.patient);
    for (const auto& gap : travel_gaps(member)) text += gap + "\n";
    for (std::size_t p = 0; p < member.parts.size(); ++p) {
      if (is_shared(team, m, p)) {
        text += say("{}, {}: {} is shared.\n", capitalised(shown_word(member.parts[p].side)),
                    function_words(member.parts[p].function), member.parts[p].item.text);
      } else {
        text += travel_part_words(member, p, today, false) + "\n";
      }
    }
  }
  text += "\n";
  for (std::size_t i = 0; i < team.shared.size(); ++i) text += shared_words(team, i, today) + "\n";
  if (!team.shared.empty()) {
    text +=
        said("Only spares that nobody has worn are shared; what somebody has worn is theirs.\n");
  }
  return text;
}

}  // namespace sparewell::desk
