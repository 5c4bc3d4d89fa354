#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <string>
#include <vector>

#include "app/gui/photo_work.h"

namespace gui {

// The work on one photo: its stamps, the letters in hand, what the person says of the item, and
// every change undoable. Holds no widget and starts no examination; it says when one is wanted.
class WorkSession : public QObject {
    Q_OBJECT

public:
    WorkSession(vision::Photo photo, std::string person, QObject* parent = nullptr);

    const vision::Photo& photo() const { return photo_; }
    const std::string& person() const { return person_; }
    const std::vector<StampWork>& stamps() const { return stamps_; }
    int current() const { return current_; }  // -1 when there are no stamps
    const StampWork* stamp() const;           // the current one, or nullptr
    const ReadingEditor& editor() const { return editor_; }
    QUndoStack* undoStack() { return &undo_; }
    // One reading a stamp, as they stand now, for ranking.
    std::vector<models::Reading> readings() const;
    // The stamps that belong into a record (see isWorthFiling).
    std::vector<StampWork> stampsToFile() const;
    bool isTouched() const;

    void setCurrent(int stamp);
    void moveTo(CellPlace place);
    void move(Move move);
    void type(const QString& text);  // each user-perceived character in turn
    void apply(Edit edit);

    // Stamps start from located or recorded outlines; forgets what could be undone.
    void setStamps(std::vector<StampWork> stamps);
    // Undoable; the stamp's examination is wanted again. Changes of one gesture (a number of the
    // caller's, not negative) that follow each other are undone together.
    void setOutline(int stamp, const vision::Quad& corners, int gesture = -1);
    void addOutline(const vision::Quad& corners);
    void deleteOutline(int stamp);
    // Takes the current stamp for a mirror image, or no longer; undoable.
    void turnMirrored();
    void takeStampExamination(const std::string& stamp_id,
                              std::shared_ptr<const flow::StampExamination> examined);

    // Candidates came into view, or went: recorded with what is read from then on.
    void setCandidatesInView(bool in_view, bool opened_by_key);

    const FilingFields& fields() const { return fields_; }
    void setFields(const FilingFields& fields);

Q_SIGNALS:
    void lettersChanged();   // cells of the current stamp
    void placeChanged();     // the cell in hand
    void stampChanged();     // another stamp, or its picture
    void outlinesChanged();  // corners, number of stamps, which is current
    void workChanged();      // anything that a draft should hold
    void examinationWanted(const QString& stamp_id);
    void goneThrough();  // the current stamp's letters, for the first time
    void couldNot(const QString& sentence);

private:
    void putLetters(const std::string& stamp_id, const models::Reading& reading, CellPlace place,
                    const cv::Matx33d& photo_from_rectified);
    void putStamps(std::vector<StampWork> stamps, int current);
    void change(const EditOutcome& outcome, const models::Reading& before, CellPlace from,
                CellPlace last_passed);
    void leave(CellPlace from, CellPlace last_passed);
    void pushStamps(const QString& what, std::vector<StampWork> after, int current_after,
                    int joins_key);
    void wantExaminations();
    StampWork* find(const std::string& stamp_id);

    vision::Photo photo_;
    std::string person_;
    std::vector<StampWork> stamps_;
    int current_ = -1;
    ReadingEditor editor_;  // of the current stamp
    QUndoStack undo_;
    FilingFields fields_;
    bool candidates_in_view_ = false;
};

}  // namespace gui
