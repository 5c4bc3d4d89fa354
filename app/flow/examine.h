#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "app/flow/ranking.h"
#include "models/candidates.h"
#include "models/date_mark.h"
#include "models/experience.h"
#include "models/maker_register.h"
#include "models/reading.h"
#include "vision/enhance.h"
#include "vision/locate.h"
#include "vision/photo.h"
#include "vision/rectify.h"
#include "vision/stamp_finder.h"
#include "vision/text_reader.h"
#include "vision/upright_network.h"

// The one way from a photograph to candidates; the command line and the window both go it.
namespace flow {

inline constexpr const char* mirrored_option = "mirrored";

// Whether the reading was made of a stamp taken for a mirror image.
bool isMirrored(const models::Reading& reading);

// What an examination works with, used by one examination at a time.
struct Engines {
    vision::StampFinder finder;
    std::unique_ptr<vision::UprightNetwork> upright;  // none: reading tells which way is up
    // At least one. Each is asked only for stamps of which those before it are not sure; what a
    // reader says counts for more than what those after it say.
    std::vector<std::unique_ptr<vision::TextReader>> readers;
    // Certainty of a line from which no other reader is asked; 0: only where nothing was read.
    double sure_from = 0;
    models::MakerRegister known;             // the register
    models::Experience experience;           // of the archive
    std::shared_ptr<const Ranking> ranking;  // of both; made when it is first needed
    std::vector<std::string> troubles;       // what cannot be used, a sentence each
};

struct ExamineOptions {
    std::optional<vision::Quad> outline{};  // one outline drawn by hand; nothing is located
    bool single_line = false;  // the photo is a tight crop of one line of text; nothing is located
    bool mirrored = false;     // the stamps are mirror images (ink come off on the facing cloth)
    bool keep_up = false;      // an outline's own up is right; reading does not turn it over
    std::string type_id{};     // item type of the register, empty when not said
    models::DayOrder day_order = models::DayOrder::Unknown;  // of dates in figures
    vision::LoadOptions load{};
    vision::LocateOptions locate{};
};

struct StampExamination {
    vision::StampOutline outline;
    vision::EnhancedStamp enhanced;  // right way up; holds the rectified stamp
    // One a reader; `options` of those of a mirror image hold the word `mirrored_option`.
    std::vector<models::Reading> readings;
    models::Reading proposal;  // merged
    // What the lines of the proposal are for, as models::guessRoles gives it.
    std::vector<std::vector<models::RoleSpan>> roles;
    // What dates its lines can hold, as models::readDates gives them.
    std::vector<std::vector<models::DateMeaning>> dates;
    models::CandidateList candidates;  // of this stamp alone
};

struct Examination {
    vision::Photo photo;  // its warnings tell also what hinders reading its marks
    std::vector<StampExamination> stamps;
    models::CandidateList candidates;  // all stamps as marks of one item
};

// Told before each stage: what is being done, and how far the whole is (0 to 1).
using Progress = std::function<void(const std::string& stage, double done)>;

// Thrown out of a stage when a stop was asked for; nothing has been changed.
struct Cancelled {};

// Loads, locates, rectifies, enhances, reads, merges and ranks. No stamp found is an empty list.
// Throws vision::ImageError for a photo that cannot be read, Cancelled after a stop request,
// std::invalid_argument for options that contradict each other.
Examination examinePhoto(const std::filesystem::path& file, Engines& engines,
                         const ExamineOptions& options = {}, std::stop_token stop = {},
                         const Progress& progress = {});

// The same for a photograph that is loaded already.
Examination examinePhoto(vision::Photo photo, Engines& engines, const ExamineOptions& options = {},
                         std::stop_token stop = {}, const Progress& progress = {});

// The stages from rectifying on, for one outline (after a person moved a corner). A stamp that was
// read before keeps its outline's lines only if they are given.
StampExamination examineStamp(const vision::Photo& photo, const vision::StampOutline& outline,
                              Engines& engines, const ExamineOptions& options = {},
                              std::stop_token stop = {});

// All stages but loading and locating, for a tight crop of one line; it lies as it is read best.
StampExamination examineSingleLine(const vision::Photo& photo, Engines& engines,
                                   const ExamineOptions& options = {}, std::stop_token stop = {});

// What dates each line can hold, by what the register knows of the item type.
std::vector<std::vector<models::DateMeaning>> datesOf(const std::vector<models::Line>& lines,
                                                      const models::MakerRegister& known,
                                                      const std::string& type_id,
                                                      models::DayOrder day_order);

// The candidates of readings taken together as marks of one item, and the unread cell that would
// settle most (ranking.h).
models::CandidateList rankReadings(const std::vector<models::Reading>& readings,
                                   const models::MakerRegister& known, const std::string& type_id,
                                   const models::Experience& experience = {});
// The same by what the engines know; their register is made ready once.
models::CandidateList rankReadings(const std::vector<models::Reading>& readings, Engines& engines,
                                   const std::string& type_id);

// The engines every Weftmark program starts with: the networks, and Tesseract and the search by
// letters' shapes in place of those whose weights cannot be used; `troubles` says why. Tesseract is
// not asked behind the network: on faint lines it writes letters where the network rightly says
// traces or lost, and on bare cloth where the network sees nothing (vision/training/README.md).
// Throws vision::ImageError or models::RegisterError.
Engines makeEngines(const std::filesystem::path& register_folder);

// Where the networks' weights lie: $WEFTMARK_WEIGHTS, the source tree where the program was built,
// or beside the program.
std::filesystem::path weightsFolder();

}  // namespace flow
